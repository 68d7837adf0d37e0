import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatPronunciation, parsePronunciation, type Pronunciation } from "../../../core/speech/phones.ts";
import { pronounce } from "../../../core/speech/pronounce.ts";

const dictionary = new Map(
  [
    "flat F L AE T",
    "bread B R EH D",
    "squash S K W AA SH",
    "knead N IY D",
    "spice S P AY S",
    "grill G R IH L",
  ].map((row): [string, Pronunciation | null] => [
    row.split(" ")[0] ?? "",
    parsePronunciation(row.slice(row.indexOf(" "))),
  ]),
);
const first = (word: string): string =>
  formatPronunciation(pronounce(word, (asked) => dictionary.get(asked) ?? null)[0] ?? ["AH"]);

describe("pronunciations", () => {
  it.each([
    ["bread", "B R EH D"],
    ["flatbread", "F L AE T B R EH D"],
    ["flatbreads", "F L AE T B R EH D Z"],
    ["squash's", "S K W AA SH IH Z"],
    ["spices", "S P AY S IH Z"],
    ["kneaded", "N IY D IH D"],
    ["grilled", "G R IH L D"],
    ["spicing", "S P AY S IH NG"],
  ])("[V4] %s sounds like the known words it is made of", (word, sounds) => {
    expect(first(word)).toBe(sounds);
  });

  it.each([
    ["teff", "T EH F"],
    ["tofu", "T OW F UW"],
    ["shakshuka", "SH AE K SH UW K AH"],
    ["kfr", "K EY EH F AA R"],
    ["12", "W AH N T UW"],
    ["日本", "AH"],
  ])("[V4] %s is spelt out by rule", (word, sounds) => {
    expect(first(word)).toBe(sounds);
  });

  it("[V4] a listed food sounds as cooks say it, in each of their ways", () => {
    expect(pronounce("za'atar", () => null).map(formatPronunciation)).toContain("Z AA T AA R");
    expect(pronounce("jalapeño", () => null).length).toBeGreaterThan(1);
  });

  it("[V4] any string at all gets at least one sound of the model", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", minLength: 1 }), (word) => {
        const ways = pronounce(word, () => null);
        expect(ways.length).toBeGreaterThan(0);
        for (const way of ways) expect(parsePronunciation(formatPronunciation(way))).toEqual(way);
      }),
    );
  });
});
