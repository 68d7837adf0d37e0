/**
 * The design of every sound that is not speech. A timer's chime is told from another's by three things at once:
 * how high it is, how its strikes are spaced, and which way the tune goes; so two timers that ring together in a
 * noisy kitchen stay apart even for a cook who hears pitch badly.
 *
 * Pitches lie between 523 and 1319 Hz, above a hood's rumble and below where hearing fades with age
 * (common practice, no source).
 */

/** One stroke on the bell. */
export interface Strike {
  /** From the start of the chime, in milliseconds. */
  readonly atMs: number;
  /** Pitch of the fundamental, in Hz. */
  readonly hz: number;
  /** How long it rings before it has faded, in milliseconds. */
  readonly ringMs: number;
  /** Loudness beside the other strikes of the chime, (0, 1]. */
  readonly gain: number;
}

/** A chime as a score; `renderChime` makes samples of it. */
export interface ChimeSpec {
  readonly strikes: readonly Strike[];
  /** Largest absolute sample of the rendered chime, (0, 0.8]. */
  readonly peak: number;
}

/** Which short signal of the caller's own: it has heard a command, it has not understood one, it listens now. */
export type Earcon = "heard" | "notUnderstood" | "listening";

/** Loudness of the first, second and third (and every later) unanswered round: about 4 dB apart. */
export const ringPeaks = [0.32, 0.5, 0.8] as const;

/** How many chimes there are before index 0's comes round again. */
export const chimeCount = 24;

/** Semitones above C5, in an order that keeps neighbouring timers at least five semitones apart. */
const roots = [0, 7, 14, 3, 10, 5, 12, 2, 9, 15, 4, 11] as const;

/** Onsets in milliseconds: the rhythms differ in number and in spacing, none is another one merely faster. */
const rhythms = [
  [0],
  [0, 420],
  [0, 160, 620],
  [0, 220, 440],
  [0, 150, 300, 900],
  [0, 500, 660],
  [0, 180, 700, 880],
  [0, 140, 280, 420, 560],
] as const;

/** Semitones from the root, one per strike: level, rising, falling, there and back. */
const tunes = [
  [0, 4, 7, 12, 16],
  [0, -5, -8, -12, -15],
  [0, 5, 0, 5, 0],
] as const;

const middleC5 = 523.25;

/** Equal temperament, A4 = 440 Hz. Source: ISO 16:1975 for the tuning pitch. */
function pitch(semitones: number): number {
  return middleC5 * 2 ** (semitones / 12);
}

/** Falling tunes start an octave up, so that no strike is lower than C5 less a few semitones. */
function fold(semitones: number): number {
  if (semitones < -5) return fold(semitones + 12);
  return semitones > 16 ? fold(semitones - 12) : semitones;
}

function pick<T>(list: readonly T[], index: number): T {
  const found = list[index % list.length];
  if (found === undefined) throw new Error(`Nothing to pick at ${index} of ${list.length}.`);
  return found;
}

/** Any whole or broken, negative or huge index lands on one of the chimes. */
function wrapped(index: number): number {
  const whole = Number.isFinite(index) ? Math.trunc(index) : 0;
  return ((whole % chimeCount) + chimeCount) % chimeCount;
}

/** @param round 1 for the first ring, 2 for the first repeat that nobody answered, and so on */
export function ringPeak(round: number): number {
  const step = Math.max(1, Math.min(ringPeaks.length, Math.trunc(round) || 1));
  return pick(ringPeaks, step - 1);
}

/**
 * The chime of one timer.
 * @param index the timer's number, counted from 0; `chimeCount` different ones, then round again
 * @param round which unanswered round this is, counted from 1: each up to the third is a little louder
 */
export function chimeFor(index: number, round: number): ChimeSpec {
  const at = wrapped(index);
  const root = pick(roots, at);
  const tune = pick(tunes, at + Math.floor(at / rhythms.length));
  const onsets = pick(rhythms, at + Math.floor(at / roots.length) * 3);
  const strikes = onsets.map((atMs, i) => ({
    atMs,
    hz: pitch(fold(root + pick(tune, i))),
    ringMs: i === onsets.length - 1 ? 1_100 : 700,
    gain: i === 0 ? 1 : 0.85,
  }));
  return { strikes, peak: ringPeak(round) };
}

/**
 * Short and quiet, so that they neither startle nor cover the first word of an answer. Rising says "heard",
 * falling says "not understood", one soft high note says "I am listening".
 */
export function earcon(kind: Earcon): ChimeSpec {
  const note = (atMs: number, semitones: number, ringMs: number): Strike => ({
    atMs,
    hz: pitch(semitones),
    ringMs,
    gain: 1,
  });
  switch (kind) {
    case "heard":
      return { strikes: [note(0, 9, 110), note(70, 14, 150)], peak: 0.22 };
    case "notUnderstood":
      return { strikes: [note(0, 3, 160), note(130, -4, 220)], peak: 0.28 };
    case "listening":
      return { strikes: [note(0, 12, 160)], peak: 0.2 };
  }
}

/** How long until the last strike has faded, in milliseconds. */
export function chimeLengthMs(spec: ChimeSpec): number {
  return Math.max(0, ...spec.strikes.map((strike) => strike.atMs + strike.ringMs));
}

/**
 * Milliseconds from one repeat of a ring to the next. It depends on the timer, so that two rings which begin
 * together drift apart and each is heard by itself.
 */
export function ringPeriodMs(index: number): number {
  return 3_200 + (wrapped(index) % 7) * 230;
}
