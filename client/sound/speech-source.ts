import { err, ok, type Result } from "../../core/units/result.ts";
import type { Clock } from "./clock.ts";
import type { FetchSpeech, SpeechFault } from "./fetch-speech.ts";

/** Sentences as sound, fetched when needed or ahead of it. */
export interface SpeechSource {
  readonly get: (text: string, rate: number) => Promise<Result<Uint8Array, SpeechFault>>;
  /** Fetches in the background, the first first; a new list replaces what is left of the last one. */
  readonly prefetch: (texts: readonly string[], rate: number) => void;
}

/** Sentences kept: the coming steps of five dishes, their cues and the answers of the last minutes. */
const maxKept = 80;
const maxAhead = 40;
const sideBySide = 2;
/** After a failure the voice is left alone this long, and a sentence not at hand falls back at once. */
const outageMs = 5_000;

/** Keeps sentences in memory, the one unused for longest forgotten first. */
export function speechSource(fetchSpeech: FetchSpeech, clock: Clock): SpeechSource {
  const kept = new Map<string, Uint8Array>();
  const pending = new Map<string, Promise<Result<Uint8Array, SpeechFault>>>();
  let ahead: { readonly text: string; readonly rate: number }[] = [];
  let fetching = 0;
  let outage: { readonly until: number; readonly fault: SpeechFault } | null = null;

  const keyOf = (text: string, rate: number): string => `${rate} ${text}`;
  const keep = (key: string, sound: Uint8Array): void => {
    kept.delete(key);
    kept.set(key, sound);
    for (const oldest of kept.keys()) {
      if (kept.size <= maxKept) break;
      kept.delete(oldest);
    }
  };
  const load = async (text: string, rate: number, urgency: "now" | "ahead"): Promise<Result<Uint8Array, SpeechFault>> => {
    const sound = await fetchSpeech(text, { rate, urgency });
    if (sound.ok) keep(keyOf(text, rate), sound.value);
    if (sound.ok || sound.error.kind === "refused") outage = null;
    else outage = { until: clock.now() + outageMs, fault: sound.error };
    return sound;
  };
  const once = (text: string, rate: number, urgency: "now" | "ahead"): Promise<Result<Uint8Array, SpeechFault>> => {
    const key = keyOf(text, rate);
    const loading = load(text, rate, urgency).finally(() => { if (pending.get(key) === loading) pending.delete(key); });
    pending.set(key, loading);
    return loading;
  };
  const isDown = (): boolean => outage !== null && clock.now() < outage.until;
  const work = (): void => {
    while (fetching < sideBySide && !isDown()) {
      const next = ahead.shift();
      if (next === undefined) return;
      const key = keyOf(next.text, next.rate);
      if (kept.has(key) || pending.has(key)) continue;
      fetching += 1;
      void once(next.text, next.rate, "ahead").finally(() => { fetching -= 1; work(); });
    }
  };

  return {
    get: (text, rate) => {
      const key = keyOf(text, rate);
      const sound = kept.get(key);
      if (sound !== undefined) {
        keep(key, sound);
        return Promise.resolve(ok(sound));
      }
      if (outage !== null && isDown()) return Promise.resolve(err(outage.fault));
      // What stopped fetching ahead may be over: go on behind this sentence.
      const loading = pending.get(key) ?? once(text, rate, "now");
      void loading.then(work);
      return loading;
    },
    prefetch: (texts, rate) => {
      ahead = texts.slice(0, maxAhead).map((text) => ({ text, rate }));
      work();
    },
  };
}
