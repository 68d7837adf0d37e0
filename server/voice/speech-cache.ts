/** A store of spoken sentences that forgets the one unused for longest. */
export interface SpeechCache {
  /** The sound kept under this key, which then counts as just used; null if there is none. */
  readonly get: (key: string) => Uint8Array | null;
  readonly put: (key: string, sound: Uint8Array) => void;
  /** Bytes of sound held now. */
  readonly bytes: () => number;
}

/**
 * Bounded both ways: by sentences, and by bytes, for twenty long answers weigh as much as two hundred short ones.
 * A sound larger than `maxBytes` is not kept at all.
 */
export function speechCache(limits: { readonly maxEntries: number; readonly maxBytes: number }): SpeechCache {
  // A Map keeps the order of insertion: the first key is the one unused for longest.
  const kept = new Map<string, Uint8Array>();
  let bytes = 0;
  const drop = (key: string): void => {
    bytes -= kept.get(key)?.byteLength ?? 0;
    kept.delete(key);
  };
  return {
    get: (key) => {
      const sound = kept.get(key);
      if (sound === undefined) return null;
      kept.delete(key);
      kept.set(key, sound);
      return sound;
    },
    put: (key, sound) => {
      drop(key);
      if (sound.byteLength > limits.maxBytes) return;
      kept.set(key, sound);
      bytes += sound.byteLength;
      for (const oldest of kept.keys()) {
        if (kept.size <= limits.maxEntries && bytes <= limits.maxBytes) break;
        drop(oldest);
      }
    },
    bytes: () => bytes,
  };
}
