import { chimeFor, ringPeak, ringPeaks, ringPeriodMs } from "../../core/sound/chime.ts";
import { renderChime } from "../../core/sound/render-chime.ts";
import type { AudioOutput, Ringing } from "./audio-output.ts";
import type { Clock } from "./clock.ts";
import type { Journal } from "./journal.ts";

/** The rings of all timers. */
export interface Ringer {
  /** A timer that rings already is only made louder. @param atEpochMs when the first stroke is to be heard */
  readonly ring: (timerId: string, chimeIndex: number, round: number, atEpochMs: number) => void;
  /** Stops it whether it rings or is about to; otherwise does nothing. */
  readonly stop: (timerId: string) => void;
  readonly stopAll: () => void;
  /** Ids of the timers that ring now, oldest first. */
  readonly ringing: () => readonly string[];
  /** Turned down while somebody is being spoken to. */
  readonly duck: (how: "down" | "up") => void;
  /** @param volume 0 to 1 */
  readonly volume: (volume: number) => void;
}

interface Ring {
  readonly chime: number;
  round: number;
  sound: Ringing | null;
  callOff: () => void;
}

const louderAfterMs = 20_000;
/** Further ahead than this nothing goes onto the audio clock: it stands still when the context is put to sleep. */
const scheduleAheadMs = 1_000;
const duckedGain = 0.2;
/** However soft the voice is set, a ring stays audible over a hood. */
const softestRing = 0.5;
const loudestPeak = ringPeaks[ringPeaks.length - 1] ?? 0.8;

class Rings implements Ringer {
  readonly #output: AudioOutput;
  readonly #clock: Clock;
  readonly #journal: Journal;
  readonly #rings = new Map<string, Ring>();
  readonly #rendered = new Map<number, Float32Array>();
  #ducked = false;
  #volume = 1;

  constructor(output: AudioOutput, clock: Clock, journal: Journal) {
    this.#output = output;
    this.#clock = clock;
    this.#journal = journal;
  }

  ring(id: string, chime: number, round: number, atEpochMs: number): void {
    const known = this.#rings.get(id);
    if (known !== undefined) {
      if (round > known.round) this.#raise(id, known, round);
      return;
    }
    const ring: Ring = { chime, round: Math.max(1, round), sound: null, callOff: () => undefined };
    this.#rings.set(id, ring);
    const early = atEpochMs - this.#clock.now() - scheduleAheadMs;
    if (early <= 0) this.#start(id, ring, atEpochMs);
    else
      ring.callOff = this.#clock.after(early + scheduleAheadMs / 2, () => {
        this.#start(id, ring, atEpochMs);
      });
  }

  stop(id: string): void {
    const ring = this.#rings.get(id);
    if (ring === undefined) return;
    ring.callOff();
    ring.sound?.stop();
    this.#rings.delete(id);
    this.#setBus();
    this.#journal.note({ kind: "ringStopped", text: id, at: this.#clock.now() });
  }

  stopAll(): void {
    for (const id of this.ringing()) this.stop(id);
  }

  ringing(): readonly string[] {
    return [...this.#rings.keys()];
  }

  duck(how: "down" | "up"): void {
    this.#ducked = how === "down";
    this.#setBus();
  }

  volume(volume: number): void {
    this.#volume = volume;
    for (const ring of this.#rings.values()) ring.sound?.loudness(this.#gainOf(ring));
  }

  #start(id: string, ring: Ring, atEpochMs: number): void {
    this.#setBus();
    const periodMs = ringPeriodMs(ring.chime);
    ring.sound = this.#output.startRing(this.#samplesOf(ring.chime), {
      periodMs,
      gain: this.#gainOf(ring),
      atEpochMs,
    });
    this.#sounds(id, ring);
  }

  #raise(id: string, ring: Ring, round: number): void {
    ring.round = round;
    // Not begun yet: it will begin as loud as that.
    if (ring.sound === null) return;
    ring.callOff();
    ring.sound.loudness(this.#gainOf(ring));
    this.#sounds(id, ring);
  }

  #sounds(id: string, ring: Ring): void {
    this.#journal.note({
      kind: "rang",
      text: id,
      chime: ring.chime,
      round: ring.round,
      at: this.#clock.now(),
    });
    if (ring.round >= ringPeaks.length) return;
    ring.callOff = this.#clock.after(louderAfterMs, () => {
      this.#raise(id, ring, ring.round + 1);
    });
  }

  #samplesOf(chime: number): Float32Array {
    const known = this.#rendered.get(chime);
    if (known !== undefined) return known;
    const samples = renderChime(chimeFor(chime, ringPeaks.length), this.#output.sampleRate());
    this.#rendered.set(chime, samples);
    return samples;
  }

  #gainOf(ring: Ring): number {
    return (ringPeak(ring.round) / loudestPeak) * Math.max(softestRing, this.#volume);
  }

  /** Several at once share the headroom: four bells at full level would clip. */
  #setBus(): void {
    this.#output.ringBus((this.#ducked ? duckedGain : 1) / Math.max(1, this.#rings.size) ** 0.6);
  }
}

/** Rings go on, louder after 20 and after 40 seconds, until stopped. */
export function createRinger(output: AudioOutput, clock: Clock, journal: Journal): Ringer {
  return new Rings(output, clock, journal);
}
