import { foodSounds } from "./food-sounds.ts";
import { letterNames, letterRules } from "./letter-sounds.ts";
import type { Phone, Pronunciation } from "./phones.ts";

/** Looks a word up in the recogniser's dictionary; null where it is not there. */
export type DictionaryLookup = (word: string) => Pronunciation | null;

/** Letters that are no plain a to z, spelt as an English reader sounds them. */
const respelt: Readonly<Record<string, string>> = {
  ñ: "ny",
  ç: "s",
  ß: "ss",
  æ: "ay",
  ø: "o",
  å: "o",
  œ: "er",
  ł: "w",
  ş: "sh",
  ș: "sh",
  ț: "ts",
  ž: "zh",
  š: "sh",
  č: "ch",
};

/**
 * The ways a word may sound, the likeliest first, at least one: from the list of foods, the dictionary, else as a known word with an ending ("spiralized" from "spiralize"),
 * else as two known words ("flatbread"), else letter by letter by rule. Never fails: a word without a vowel is
 * spelt out, and what has no sound at all is the neutral vowel, so that a strange name cannot stop the grammar.
 * @param word one word as `spokenWords` gives it
 */
export function pronounce(word: string, lookup: DictionaryLookup): readonly Pronunciation[] {
  const listed = foodSounds.get(word.normalize("NFC").toLowerCase());
  if (listed !== undefined) return listed;
  const plain = plainLetters(word);
  const derived = lookup(word) ?? lookup(plain) ?? withEnding(plain, lookup) ?? asCompound(plain, lookup);
  if (derived !== null) return [derived];
  const spelt = byParts(plain, lookup);
  const weak = weakened(spelt);
  return weak.join() === spelt.join() ? [spelt] : [spelt, weak];
}

/** The same with every plain a, o and e after the first vowel weakened, as English does when it does not know. */
function weakened(sounds: Pronunciation): Pronunciation {
  let vowels = 0;
  return sounds.map((sound) => {
    if (!/^[AEIOU]/.test(sound)) return sound;
    vowels++;
    return vowels > 1 && (sound === "AA" || sound === "AE" || sound === "EH") ? "AH" : sound;
  });
}

function plainLetters(word: string): string {
  const spelt = [...word.normalize("NFC").toLowerCase()].map((letter) => respelt[letter] ?? letter).join("");
  return spelt.replace(/[éè]$/u, "ay").normalize("NFD").replaceAll(/\p{M}/gu, "");
}

const voiceless: readonly Phone[] = ["P", "T", "K", "F", "TH"];
const hissing: readonly Phone[] = ["S", "Z", "SH", "ZH", "CH", "JH"];

function withEnding(word: string, lookup: DictionaryLookup): Pronunciation | null {
  const possessive = /^(.{2,})'s$/.exec(word) ?? /^(.{2,}[^s])s$/.exec(word);
  if (possessive?.[1] !== undefined) {
    const stem = lookup(possessive[1]);
    const last = stem?.at(-1);
    if (stem !== null && last !== undefined) {
      return [
        ...stem,
        ...(hissing.includes(last)
          ? (["IH", "Z"] as const)
          : ([voiceless.includes(last) ? "S" : "Z"] as const)),
      ];
    }
  }
  const past = /^(.{3,})ed$/.exec(word)?.[1];
  if (past !== undefined) {
    const stem = lookup(past) ?? lookup(`${past}e`);
    const last = stem?.at(-1);
    if (stem !== null && last !== undefined) {
      if (last === "T" || last === "D") return [...stem, "IH", "D"];
      return [...stem, voiceless.includes(last) || hissing.includes(last) ? "T" : "D"];
    }
  }
  const going = /^(.{3,})ing$/.exec(word)?.[1];
  const stem = going === undefined ? null : (lookup(going) ?? lookup(`${going}e`));
  return stem === null ? null : [...stem, "IH", "NG"];
}

/** The split into two known words of at least three letters whose shorter part is longest. */
function asCompound(word: string, lookup: DictionaryLookup): Pronunciation | null {
  const splits = Array.from({ length: Math.max(0, word.length - 5) }, (_, at) => at + 3).sort(
    (a, b) => Math.abs(a - word.length / 2) - Math.abs(b - word.length / 2),
  );
  for (const at of splits) {
    const left = lookup(word.slice(0, at));
    const right = left === null ? null : (lookup(word.slice(at)) ?? withEnding(word.slice(at), lookup));
    if (left !== null && right !== null) return [...left, ...right];
  }
  return null;
}

/** Letters by rule; digits and vowelless runs by name; anything else is silent. */
function byParts(word: string, lookup: DictionaryLookup): Pronunciation {
  const parts = word.match(/[a-z]+|\d/g) ?? [];
  const sounds = parts.flatMap((part) => {
    const known = part === word ? null : part.length > 2 ? lookup(part) : null;
    if (known !== null) return known;
    return /[aeiouy]/.test(part) ? byRule(part) : [...part].flatMap((letter) => letterNames[letter] ?? []);
  });
  return sounds.length > 0 ? sounds : ["AH"];
}

function byRule(word: string): readonly Phone[] {
  const sounds: Phone[] = [];
  for (let at = 0; at < word.length;) {
    const before = word.slice(0, at);
    const found = letterRules.find(
      ({ letters, before: left, after: right }) =>
        word.startsWith(letters, at) &&
        (left === null || left.test(before)) &&
        (right === null || right.test(word.slice(at + letters.length))),
    );
    sounds.push(...(found?.sounds ?? []));
    at += found?.letters.length ?? 1;
  }
  return sounds.length > 0 ? sounds : [...word].flatMap((letter) => letterNames[letter] ?? []);
}
