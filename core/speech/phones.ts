/**
 * The 39 phones of the bundled acoustic model, in the notation of the CMU Pronouncing Dictionary
 * without stress marks. Source: soundswallower 0.6.3, model/en-us/phoneset.json.
 */
export const phones = [
  "AA",
  "AE",
  "AH",
  "AO",
  "AW",
  "AY",
  "B",
  "CH",
  "D",
  "DH",
  "EH",
  "ER",
  "EY",
  "F",
  "G",
  "HH",
  "IH",
  "IY",
  "JH",
  "K",
  "L",
  "M",
  "N",
  "NG",
  "OW",
  "OY",
  "P",
  "R",
  "S",
  "SH",
  "T",
  "TH",
  "UH",
  "UW",
  "V",
  "W",
  "Y",
  "Z",
  "ZH",
] as const;

/** One sound of English speech as the acoustic model knows it. */
export type Phone = (typeof phones)[number];

/** How a word sounds: phones in order, never empty. */
export type Pronunciation = readonly Phone[];

/** Reads "K IH CH AH N"; null where a part is no phone or nothing is there. */
export function parsePronunciation(text: string): Pronunciation | null {
  const parts = text.trim().split(/\s+/);
  return parts.every(isPhone) ? parts : null;
}

/** Writes a pronunciation as the recogniser reads it. */
export function formatPronunciation(pronunciation: Pronunciation): string {
  return pronunciation.join(" ");
}

function isPhone(text: string): text is Phone {
  return (phones as readonly string[]).includes(text);
}
