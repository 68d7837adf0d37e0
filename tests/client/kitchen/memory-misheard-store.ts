import type { MisheardStore } from "../../../client/storage/misheard-store.ts";
import type { Misheard } from "../../../core/speech/misheard/misheard.ts";
import { err, ok } from "../../../core/units/result.ts";

/** A store that forgets with the test. */
export interface MemoryMisheardStore extends MisheardStore {
  /** From here on everything is refused with this sentence; null: nothing is. */
  readonly refuse: (sentence: string | null) => void;
}

/** @param wav the sound of the sentences that are in it from the beginning */
export function memoryMisheardStore(
  rows: readonly Misheard[] = [],
  wav: Uint8Array = new Uint8Array(0),
): MemoryMisheardStore {
  const sentences = new Map(rows.map((row) => [row.id, { row, wav }]));
  let refused: string | null = null;
  const unlessRefused = async <T>(work: () => T) => (refused === null ? ok(work()) : err(refused));
  return {
    refuse: (sentence) => {
      refused = sentence;
    },
    list: () =>
      unlessRefused(() => [...sentences.values()].map(({ row }) => row).toSorted((a, b) => a.at - b.at)),
    add: (row, sound) =>
      unlessRefused(() => {
        sentences.set(row.id, { row, wav: new Uint8Array(sound) });
        return null;
      }),
    change: (row) =>
      unlessRefused(() => {
        sentences.set(row.id, { row, wav: sentences.get(row.id)?.wav ?? wav });
        return null;
      }),
    sound: async (id) => {
      const found = sentences.get(id);
      return found === undefined || refused !== null ? err(refused ?? "gone") : ok(found.wav);
    },
    remove: (id) =>
      unlessRefused(() => {
        if (id === null) sentences.clear();
        else sentences.delete(id);
        return null;
      }),
  };
}
