import { remembering } from "./remembering.ts";
import type { Tokens } from "./transcriber.ts";

/** Turns texts into tokens and back; spaces are "▁". */
export type Speller = {
  /** Null where a character of the text has no token. */
  readonly spell: (text: string) => readonly number[] | null;
  readonly textOf: (token: number) => string;
};

/**
 * Spells as the tokens were learnt: by merging pairs, the one first that was learnt first, which its number tells
 * (byte-pair encoding: Sennrich, Haddow and Birch, ACL 2016). A model has seen every text spelt in this one way only.
 */
export function createSpeller({ texts }: Tokens): Speller {
  const numbers = new Map<string, number>();
  for (const [number, text] of texts.entries()) if (!numbers.has(text)) numbers.set(text, number);
  const spell = remembering((text: string): readonly number[] | null => {
    let pieces: readonly string[] = Array.from(text);
    for (let pair = firstLearnt(pieces, numbers); pair !== null; pair = firstLearnt(pieces, numbers)) {
      const merged = `${pieces[pair] ?? ""}${pieces[pair + 1] ?? ""}`;
      pieces = [...pieces.slice(0, pair), merged, ...pieces.slice(pair + 2)];
    }
    const spelt = pieces.flatMap((piece) => numbers.get(piece) ?? []);
    return spelt.length === pieces.length ? spelt : null;
  });
  return { spell, textOf: (token) => texts[token] ?? "" };
}

/** Where the pair begins that is to be merged next; null where none was ever learnt. */
function firstLearnt(pieces: readonly string[], numbers: ReadonlyMap<string, number>): number | null {
  let [at, least]: [number | null, number] = [null, Infinity];
  for (let pair = 0; pair + 1 < pieces.length; pair++) {
    const number = numbers.get(`${pieces[pair] ?? ""}${pieces[pair + 1] ?? ""}`) ?? Infinity;
    if (number < least) [at, least] = [pair, number];
  }
  return at;
}
