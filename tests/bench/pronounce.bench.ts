/**
 * How well words sound that no dictionary has: words of the CMU Pronouncing Dictionary (the copy that comes with the
 * recogniser), each taken out of it before it is pronounced, so that only its parts and the rules are left.
 * Run: npx tsx tests/bench/pronounce.bench.ts
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { parsePronunciation, type Pronunciation } from "../../core/speech/phones.ts";
import { pronounce } from "../../core/speech/pronounce.ts";
import { percent, print } from "./figures.ts";

/** One word of so many is held out. */
const every = 37;

const folder = dirname(createRequire(import.meta.url).resolve("soundswallower"));
const dictionary = new Map<string, Pronunciation[]>();
for (const line of readFileSync(join(folder, "model/en-us/dict.txt"), "utf8").split("\n")) {
  const [, word = "", sounds = ""] = /^([a-z']+)(?:\(\d\))? (.+)$/.exec(line) ?? [];
  const way = parsePronunciation(sounds);
  if (word.length > 2 && way !== null) dictionary.set(word, [...(dictionary.get(word) ?? []), way]);
}

/** Phones to put in, leave out or change (Levenshtein, 1966). */
function distance(one: Pronunciation, other: Pronunciation): number {
  let row = other.map((_, at) => at + 1);
  for (const [at, phone] of one.entries()) {
    let left = at + 1;
    let corner = at;
    row = row.map((up, column) => {
      const best = Math.min(up + 1, left + 1, corner + (phone === other[column] ? 0 : 1));
      corner = up;
      left = best;
      return best;
    });
  }
  return row.at(-1) ?? one.length;
}

/** The least that any of the ways is away from any that the dictionary gives. */
const nearest = (ways: readonly Pronunciation[], given: readonly Pronunciation[]) =>
  ways
    .flatMap((way) => given.map((right) => ({ wrong: distance(way, right), of: right.length })))
    .reduce((a, b) => (b.wrong / b.of < a.wrong / a.of ? b : a));

type Sum = { words: number; whole: number; phones: number; wrong: number };
const sums = new Map<string, Sum>();
function count(how: string, { wrong, of }: { readonly wrong: number; readonly of: number }): void {
  const sum = sums.get(how) ?? { words: 0, whole: 0, phones: 0, wrong: 0 };
  sums.set(how, {
    words: sum.words + 1,
    whole: sum.whole + (wrong === 0 ? 1 : 0),
    phones: sum.phones + of,
    wrong: sum.wrong + wrong,
  });
}

const words = [...dictionary.keys()].filter((_, at) => at % every === 0);
for (const word of words) {
  const given = dictionary.get(word) ?? [];
  const others = (asked: string): Pronunciation | null =>
    asked === word ? null : (dictionary.get(asked)?.[0] ?? null);
  const byRule = pronounce(word, () => null);
  const byAll = pronounce(word, others);
  count("letter by letter alone", nearest(byRule, given));
  count("with endings and parts of the dictionary", nearest(byAll, given));
  if (byAll[0]?.join() !== byRule[0]?.join()) count("  of these, where they helped", nearest(byAll, given));
}
print(`${words.length} words of ${dictionary.size}, the best of the ways that each may sound`);
for (const [how, { words: all, whole, phones, wrong }] of sums)
  print(
    `${how.padEnd(46)} phones ${percent(phones - wrong, phones)}, whole words ${percent(whole, all)} (${all})`,
  );
