import tokenizer from "llama-tokenizer-js";
import { describe, expect, it } from "vitest";
import { createSpeller } from "../../../../core/speech/transcribe/speller.ts";
import { eveningSentences } from "../../../voice/evening-sentences.ts";

describe("a speller", () => {
  const texts = ["<unk>", "<s>", "</s>", "ab", "bc", "abc", "a", "b", "c", "▁"];
  const { spell, textOf } = createSpeller({ texts, first: 1, last: 2 });

  it("[V51] merges first what was learnt first, and as far as it was learnt", () => {
    expect(spell("abc")).toEqual([5]);
    expect(spell("bcab")).toEqual([4, 3]);
    expect(spell("abbc")).toEqual([3, 4]);
    expect(spell("▁a")).toEqual([9, 6]);
    expect(textOf(5)).toBe("abc");
  });

  it("[V51] a character without a token cannot be spelt", () => {
    expect(spell("abx")).toBeNull();
    expect(spell("")).toEqual([]);
  });

  // Reference: the package llama-tokenizer-js, which has the tokens of the model and an encoder of its own.
  it("[V51] spells every sentence of the evenings as the reference does", () => {
    const own = createSpeller({ texts: tokenizer.vocabById, first: 1, last: 2 });
    const sentences = [
      ...eveningSentences.flatMap(({ sentences: of }) => of),
      "Jalapeño flatbreads, 15 to 20 minutes.",
      "Rösti!",
    ];
    expect(sentences.length).toBeGreaterThan(100);
    for (const sentence of sentences)
      expect(own.spell(`▁${sentence.replaceAll(" ", "▁")}`), sentence).toEqual(
        tokenizer.encode(sentence, false, true),
      );
  });
});
