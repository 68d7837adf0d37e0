import type { Phone } from "./phones.ts";

/** One rule: where these letters stand, between these neighbours, they sound so. */
export type LetterRule = {
  readonly letters: string;
  /** What must stand before, as the end of a pattern; null for anything. */
  readonly before: RegExp | null;
  /** What must stand after, as the start of a pattern; null for anything. */
  readonly after: RegExp | null;
  readonly sounds: readonly Phone[];
};

/** Reads "letters|before|after|sounds", a compact row for each rule; an empty part stands for anything. */
function rule(row: string): LetterRule {
  const [letters = "", before = "", after = "", sounds = ""] = row.split("|");
  return {
    letters,
    before: before === "" ? null : new RegExp(`(?:${before})$`),
    after: after === "" ? null : new RegExp(`^(?:${after})`),
    sounds: sounds.split(" ").filter((sound): sound is Phone => sound !== ""),
  };
}

const consonant = "[bcdfghjklmnpqrstvwxz]";
/** One consonant, then a silent e that ends the word: the vowel before says its name ("bake"). */
const magicE = `${consonant}e[sd]?$`;

/**
 * English spelling in about a hundred rules, the first that fits wins. Common practice of English spelling, no
 * single source; written for foods, dishes and names, where Italian, Spanish, French and Hindi loans abound.
 */
export const letterRules: readonly LetterRule[] = [
  // A
  "aa|||AA",
  "ai|||EY",
  "ay|||EY",
  "au|||AO",
  "aw|||AO",
  `a||${magicE}|EY`,
  "a||r(?![aeiou])|AA",
  "a|w||AA",
  "a||$|AH",
  "a|^|[^aeiou]{2}|AE",
  "a||[^aeiou][aeiouy]|AA",
  "a|||AE",
  // B
  "bb|||B",
  "b|m|$|",
  "b|||B",
  // C
  "cch|||K",
  "cc||[ei]|K S",
  "cc|||K",
  "ch||[lr]|K",
  "ch|||CH",
  "ck|||K",
  "cqu|||K W",
  "c||[eiy]|S",
  "c|||K",
  // D
  "dge|||JH",
  "dd|||D",
  "dh|||D",
  "d|||D",
  // E
  "eau|||OW",
  "ee|||IY",
  "ea|||IY",
  "ei|||EY",
  "eu|||Y UW",
  "ew|||UW",
  "ey||$|IY",
  "er||$|ER",
  "er||[^aeiou]|ER",
  "e|[aeiouy].*[^aeiou]|$|",
  "e||$|IY",
  "es|[szxc]|$|IH Z",
  "es|[aeiouy].*[^aeiou]|$|Z",
  "ed|[td]|$|IH D",
  `e||${magicE}|IY`,
  "e|||EH",
  // F, G
  "ff|||F",
  "f|||F",
  "gh|^||G",
  "gh|[aeiou]|[^aeiou]|",
  "gh|||G",
  "gg|||G",
  "gn|^||N",
  "gn|||N Y",
  "gu||[ei]|G",
  "g||[eiy]|JH",
  "g|||G",
  // H, I
  "h|[aeiou]|$|",
  "h|||HH",
  "ie||$|IY",
  "igh|||AY",
  "ier|||IY R",
  "ia|||IY AH",
  "io|||IY OW",
  "ir||[^aeiou]|ER",
  `i||${magicE}|AY`,
  "i||$|IY",
  "i|||IH",
  // J, K, L, M
  "j|||JH",
  "kn|^||N",
  "kk|||K",
  "kh|||K",
  "k|||K",
  "le|[^aeiou]|$|AH L",
  "ll|||L",
  "l|||L",
  "mm|||M",
  "m|||M",
  // N, O
  "ng||$|NG",
  "nn|||N",
  "nk|||NG K",
  "n|||N",
  "oa|||OW",
  "oo|||UW",
  "oi|||OY",
  "oy|||OY",
  "ou|||UW",
  "ow||$|OW",
  "ow|||AW",
  "or|||AO R",
  `o||${magicE}|OW`,
  "o||$|OW",
  "o||[^aeiou][aeiouy]|OW",
  "o|||AA",
  // P, Q, R, S
  "ph|||F",
  "pp|||P",
  "ps|^||S",
  "p|||P",
  "qu|||K W",
  "q|||K",
  "rr|||R",
  "rh|||R",
  "r|||R",
  "sch|||SH",
  "sh|||SH",
  "ss|||S",
  "sc||[eiy]|S",
  "sion|||ZH AH N",
  "s|[bdgvmnlr]|$|Z",
  "s|[aeiou]|e$|Z",
  "s|||S",
  // T, U, V
  "tch|||CH",
  "tion|||SH AH N",
  "tt|||T",
  "th|||TH",
  "tz|||T S",
  "t|||T",
  "ui|||UW IY",
  "ur||[^aeiou]|ER",
  "ur||$|ER",
  `u||${magicE}|UW`,
  "u||$|UW",
  "u||[^aeiou][aeiouy]|UW",
  "u|||AH",
  "vv|||V",
  "v|||V",
  // W, X, Y, Z
  "wh|||W",
  "wr|^||R",
  "ww|||W",
  "w|[aeiou]|$|",
  "w|||W",
  "x|^||Z",
  "x|||K S",
  "y|^||Y",
  "y||[aeiou]|Y",
  "y||$|IY",
  "y|||IH",
  "zz|[i]||T S",
  "zz|||Z",
  "zh|||ZH",
  "z|||Z",
].map(rule);

/** The names of the letters, for what has no vowel to be read by ("kfr", "bbq"). */
export const letterNames: Readonly<Record<string, readonly Phone[]>> = {
  a: ["EY"],
  b: ["B", "IY"],
  c: ["S", "IY"],
  d: ["D", "IY"],
  e: ["IY"],
  f: ["EH", "F"],
  g: ["JH", "IY"],
  h: ["EY", "CH"],
  i: ["AY"],
  j: ["JH", "EY"],
  k: ["K", "EY"],
  l: ["EH", "L"],
  m: ["EH", "M"],
  n: ["EH", "N"],
  o: ["OW"],
  p: ["P", "IY"],
  q: ["K", "Y", "UW"],
  r: ["AA", "R"],
  s: ["EH", "S"],
  t: ["T", "IY"],
  u: ["Y", "UW"],
  v: ["V", "IY"],
  w: ["D", "AH", "B", "AH", "L", "Y", "UW"],
  x: ["EH", "K", "S"],
  y: ["W", "AY"],
  z: ["Z", "IY"],
  "0": ["Z", "IH", "R", "OW"],
  "1": ["W", "AH", "N"],
  "2": ["T", "UW"],
  "3": ["TH", "R", "IY"],
  "4": ["F", "AO", "R"],
  "5": ["F", "AY", "V"],
  "6": ["S", "IH", "K", "S"],
  "7": ["S", "EH", "V", "AH", "N"],
  "8": ["EY", "T"],
  "9": ["N", "AY", "N"],
};
