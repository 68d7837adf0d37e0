import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { remembering } from "../../../../core/speech/transcribe/remembering.ts";

describe("what is remembered of words", () => {
  it("[V163] a text that is known, and one that was forgotten, has the answer that it would have anew", () => {
    const plain = (text: string): readonly string[] | null => (text === "" ? null : text.split(" "));
    const known = remembering(plain);
    fc.assert(
      fc.property(fc.array(fc.constantFrom("", "stir", "the pot", "__proto__")), (texts) => {
        expect(texts.map(known)).toEqual(texts.map(plain));
      }),
    );
    for (let other = 0; other < 60_000; other++) known(`other ${other}`);
    expect(["the pot", "other 7", ""].map(known)).toEqual([["the", "pot"], ["other", "7"], null]);
  });

  it("[V163] a text that is known is not worked out again, though it came to nothing", () => {
    const asked: string[] = [];
    const known = remembering((text) => {
      asked.push(text);
      return null;
    });
    for (const text of ["stir", "taste", "stir", "stir", "taste"]) known(text);
    expect(asked).toEqual(["stir", "taste"]);
  });
});
