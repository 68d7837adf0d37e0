import { err, ok, type Result } from "../../core/units/result.ts";
import type { Clock } from "./clock.ts";
import type { FetchSpeech, SpeechFault } from "./fetch-speech.ts";

/** Sentences as sound, fetched when needed or ahead of it. */
export interface SpeechSource {
  readonly get: (text: string, rate: number) => Promise<Result<Uint8Array, SpeechFault>>;
  /** Fetches in the background, the first first; a new list replaces what is left of the last one. */
  readonly prefetch: (texts: readonly string[], rate: number) => void;
  /** Another voice speaks, or says things otherwise: what is kept or on its way is fetched anew. */
  readonly forget: () => void;
}

/** Sentences kept: the coming steps of five dishes, their cues and the answers of the last minutes. */
const maxKept = 80;
const maxAhead = 40;
const sideBySide = 2;
/** After a failure the voice is left alone this long, and a sentence not at hand falls back at once. */
const outageMs = 5_000;

interface Wanted {
  readonly text: string;
  readonly rate: number;
}

function keyOf({ text, rate }: Wanted): string {
  return `${rate} ${text}`;
}

class KeptSpeech implements SpeechSource {
  readonly #fetchSpeech: FetchSpeech;
  readonly #clock: Clock;
  readonly #kept = new Map<string, Uint8Array>();
  readonly #pending = new Map<string, Promise<Result<Uint8Array, SpeechFault>>>();
  #ahead: Wanted[] = [];
  /** What was last asked for ahead, fetched or not. */
  #coming: readonly Wanted[] = [];
  #fetching = 0;
  /** Counts the times that all was forgotten: what was asked for before is not kept. */
  #since = 0;
  #outage: { readonly until: number; readonly fault: SpeechFault } | null = null;

  constructor(fetchSpeech: FetchSpeech, clock: Clock) {
    this.#fetchSpeech = fetchSpeech;
    this.#clock = clock;
  }

  get(text: string, rate: number): Promise<Result<Uint8Array, SpeechFault>> {
    const key = keyOf({ text, rate });
    const sound = this.#kept.get(key);
    if (sound !== undefined) {
      this.#keep(key, sound);
      return Promise.resolve(ok(sound));
    }
    const down = this.#down();
    if (down !== null) return Promise.resolve(err(down));
    const loading = this.#pending.get(key) ?? this.#once({ text, rate }, "now");
    // What stopped fetching ahead may be over: go on behind this sentence.
    void loading.then(() => {
      this.#work();
    });
    return loading;
  }

  prefetch(texts: readonly string[], rate: number): void {
    this.#coming = texts.slice(0, maxAhead).map((text) => ({ text, rate }));
    this.#ahead = [...this.#coming];
    this.#work();
  }

  forget(): void {
    this.#kept.clear();
    this.#pending.clear();
    this.#since += 1;
    this.#ahead = [...this.#coming];
    this.#work();
  }

  #down(): SpeechFault | null {
    return this.#outage !== null && this.#clock.now() < this.#outage.until ? this.#outage.fault : null;
  }

  #keep(key: string, sound: Uint8Array): void {
    this.#kept.delete(key);
    this.#kept.set(key, sound);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= maxKept) break;
      this.#kept.delete(oldest);
    }
  }

  #once(wanted: Wanted, urgency: "now" | "ahead"): Promise<Result<Uint8Array, SpeechFault>> {
    const key = keyOf(wanted);
    const loading = this.#load(wanted, urgency).finally(() => {
      if (this.#pending.get(key) === loading) this.#pending.delete(key);
    });
    this.#pending.set(key, loading);
    return loading;
  }

  async #load(wanted: Wanted, urgency: "now" | "ahead"): Promise<Result<Uint8Array, SpeechFault>> {
    const since = this.#since;
    const sound = await this.#fetchSpeech(wanted.text, { rate: wanted.rate, urgency });
    if (sound.ok && since === this.#since) this.#keep(keyOf(wanted), sound.value);
    if (sound.ok || sound.error.kind === "refused") this.#outage = null;
    else this.#outage = { until: this.#clock.now() + outageMs, fault: sound.error };
    return sound;
  }

  #work(): void {
    while (this.#fetching < sideBySide && this.#down() === null) {
      const next = this.#ahead.shift();
      if (next === undefined) return;
      if (this.#kept.has(keyOf(next)) || this.#pending.has(keyOf(next))) continue;
      this.#fetching += 1;
      void this.#once(next, "ahead").finally(() => {
        this.#fetching -= 1;
        this.#work();
      });
    }
  }
}

/** Keeps sentences in memory, the one unused for longest forgotten first. */
export function speechSource(fetchSpeech: FetchSpeech, clock: Clock): SpeechSource {
  return new KeptSpeech(fetchSpeech, clock);
}
