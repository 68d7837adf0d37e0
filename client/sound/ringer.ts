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

/** Rings go on, louder after 20 and after 40 seconds, until stopped. */
export function createRinger(output: AudioOutput, clock: Clock, journal: Journal): Ringer {
  const rings = new Map<string, Ring>();
  const rendered = new Map<number, Float32Array>();
  let ducked = false;
  let volume = 1;

  const samplesOf = (chime: number): Float32Array => {
    const known = rendered.get(chime);
    if (known !== undefined) return known;
    const samples = renderChime(chimeFor(chime, ringPeaks.length), output.sampleRate());
    rendered.set(chime, samples);
    return samples;
  };
  const gainOf = (ring: Ring): number => (ringPeak(ring.round) / loudestPeak) * Math.max(softestRing, volume);
  // Several at once share the headroom: four bells at full level would clip.
  const setBus = (): void => { output.ringBus((ducked ? duckedGain : 1) / Math.max(1, rings.size) ** 0.6); };
  const note = (id: string, ring: Ring): void => {
    journal.note({ kind: "rang", text: id, chime: ring.chime, round: ring.round, at: clock.now() });
  };
  const growLater = (id: string, ring: Ring): void => {
    if (ring.round >= ringPeaks.length) return;
    ring.callOff = clock.after(louderAfterMs, () => { raise(id, ring, ring.round + 1); });
  };
  const raise = (id: string, ring: Ring, round: number): void => {
    ring.callOff();
    ring.round = round;
    ring.sound?.loudness(gainOf(ring));
    note(id, ring);
    growLater(id, ring);
  };
  const start = (id: string, ring: Ring, atEpochMs: number): void => {
    setBus();
    ring.sound = output.startRing(samplesOf(ring.chime), { periodMs: ringPeriodMs(ring.chime), gain: gainOf(ring), atEpochMs });
    note(id, ring);
    growLater(id, ring);
  };
  const stop = (id: string): void => {
    const ring = rings.get(id);
    if (ring === undefined) return;
    ring.callOff();
    ring.sound?.stop();
    rings.delete(id);
    setBus();
    journal.note({ kind: "ringStopped", text: id, at: clock.now() });
  };

  return {
    ring: (id, chime, round, atEpochMs) => {
      const known = rings.get(id);
      if (known !== undefined) {
        if (round > known.round) raise(id, known, round);
        return;
      }
      const ring: Ring = { chime, round: Math.max(1, round), sound: null, callOff: () => undefined };
      rings.set(id, ring);
      const early = atEpochMs - clock.now() - scheduleAheadMs;
      if (early <= 0) start(id, ring, atEpochMs);
      else ring.callOff = clock.after(early + scheduleAheadMs / 2, () => { start(id, ring, atEpochMs); });
    },
    stop,
    stopAll: () => { for (const id of [...rings.keys()]) stop(id); },
    ringing: () => [...rings.keys()],
    duck: (how) => { ducked = how === "down"; setBus(); },
    volume: (next) => {
      volume = next;
      for (const ring of rings.values()) ring.sound?.loudness(gainOf(ring));
    },
  };
}
