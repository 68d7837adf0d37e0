import type { Misheard } from "./misheard.ts";
import { utf8 } from "./utf8.ts";
import { zipArchive } from "./zip-archive.ts";

/** One sentence of the record with its sound: a WAV file, mono, 16 kHz, 16 bits. */
export type WithSound = { readonly misheard: Misheard; readonly wav: Uint8Array };

/**
 * The whole record as one archive, the oldest sentence first: `sentences.jsonl`, one JSON object a line, and beside
 * it the WAV files that its lines name. Laid out in docs/misheard-sentences.md.
 */
export function recordFile(record: readonly WithSound[]): Uint8Array {
  const sounds = record
    .toSorted((a, b) => a.misheard.at - b.misheard.at)
    .map(({ misheard, wav }, at) => ({ name: `${String(at + 1).padStart(3, "0")}.wav`, misheard, wav }));
  const lines = sounds.map(({ name, misheard: { at, heard, cameTo, likely, meant } }) =>
    JSON.stringify({ wav: name, atMs: at, heard, cameTo, likely, meant }),
  );
  const text = utf8(lines.map((line) => `${line}\n`).join(""));
  return zipArchive([
    { name: "sentences.jsonl", bytes: text },
    ...sounds.map(({ name, wav }) => ({ name, bytes: wav })),
  ]);
}
