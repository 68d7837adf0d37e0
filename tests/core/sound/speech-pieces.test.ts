import fc from "fast-check";
import { expect, it } from "vitest";
import { speechPieces } from "../../../core/sound/speech-pieces.ts";

it("[S8] a long text is cut at the end of a sentence, else after a comma, else between words", () => {
  expect(speechPieces("Drain it. Rinse it well, then dry it.", 20)).toEqual([
    "Drain it.",
    "Rinse it well,",
    "then dry it.",
  ]);
  expect(speechPieces("stir the lentils gently", 12)).toEqual(["stir the", "lentils", "gently"]);
  expect(speechPieces("abcdefgh", 3)).toEqual(["abc", "def", "gh"]);
  expect(speechPieces("  ", 10)).toEqual([]);
});

it("[S8] no piece is empty or too long, and no letter is lost", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 300 }), fc.integer({ min: 1, max: 80 }), (text, max) => {
      const pieces = speechPieces(text, max);
      for (const piece of pieces) expect(piece.length > 0 && piece.length <= max).toBe(true);
      expect(pieces.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
    }),
  );
});
