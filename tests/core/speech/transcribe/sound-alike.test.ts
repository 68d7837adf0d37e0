import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { pronounce } from "../../../../core/speech/pronounce.ts";
import { parsePronunciation } from "../../../../core/speech/phones.ts";
import { otherSpellings } from "../../../../core/speech/transcribe/written-forms.ts";

/** Every way a word sounds in the dictionary of the light engine (made from the CMU Pronouncing Dictionary). */
function dictionary(): ReadonlyMap<string, readonly string[]> {
  const folder = dirname(createRequire(import.meta.url).resolve("soundswallower"));
  const ways = new Map<string, string[]>();
  for (const line of readFileSync(join(folder, "model", "en-us", "dict.txt"), "utf8").split("\n")) {
    const [entry = "", ...phones] = line.trim().split(/\s+/);
    const word = entry.replace(/\(\d+\)$/, "");
    ways.set(word, [...(ways.get(word) ?? []), phones.join(" ")]);
  }
  return ways;
}

describe("words that sound alike", () => {
  it("[V74] do so in the dictionary of the light engine, but for the few that voices run together", () => {
    const dictionaryWays = dictionary();
    const ways = (word: string): readonly string[] => [
      ...(dictionaryWays.get(word) ?? []),
      ...pronounce(word, (known) => parsePronunciation(dictionaryWays.get(known)?.[0] ?? "")).map((way) =>
        way.join(" "),
      ),
    ];
    const runTogether = ["undo", "alright", "okay"];
    const apart = [...otherSpellings]
      .filter(([word]) => !runTogether.includes(word))
      .flatMap(([word, others]) => others.map((other) => [word, other] as const))
      .filter(([word, other]) => !ways(word).some((way) => ways(other).includes(way)));
    expect(apart).toEqual([]);
  });
});
