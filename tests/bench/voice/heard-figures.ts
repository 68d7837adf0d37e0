import { z } from "zod";
import { median, quantile } from "../figures.ts";
import { outcomes, type Trial, type TrialOutcome } from "./listen.ts";

const count = z.int().nonnegative();

/** What the sentences of one condition came to with one ear; with the number of those whose every word was right. */
const heardSchema = z.strictObject({
  ear: z.string(),
  condition: z.string(),
  sentences: count,
  exact: count,
  right: count,
  asked: count,
  silent: count,
  beside: count,
  wrong: count,
  /** Processor time, in ms a sentence, and as a share of the sound's own length. */
  p50Ms: z.number(),
  p95Ms: z.number(),
  realTimeFactor: z.number(),
});

/** What an ear made of so many hours of other talk; one entry for each seed. */
const overheardSchema = z.strictObject({
  ear: z.string(),
  mode: z.enum(["addressed", "open"]),
  seed: z.int(),
  hours: z.number(),
  obeyed: z.array(z.strictObject({ text: z.string(), speaker: z.string(), heard: z.string() })),
  realTimeFactor: z.number(),
  memoryMB: z.number(),
});

/** All that was measured of voices. */
export const figuresSchema = z.strictObject({
  heard: z.array(heardSchema),
  overheard: z.array(overheardSchema),
});

export type HeardFigures = z.infer<typeof heardSchema>;
export type OverheardFigures = z.infer<typeof overheardSchema>;
export type Figures = z.infer<typeof figuresSchema>;

/** Of the trials of one ear in one condition. */
export function figuresOf(trials: readonly Trial[]): HeardFigures {
  const [first] = trials;
  if (first === undefined) throw new Error("No sentence was said: give a smaller --every.");
  const of = (outcome: TrialOutcome): number => trials.filter((trial) => trial.outcome === outcome).length;
  const cpuMs = trials.map((trial) => trial.cpuMs);
  const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
  const factor = sum(cpuMs) / (1000 * sum(trials.map(({ soundS }) => soundS)));
  return {
    ear: first.ear,
    condition: first.condition,
    sentences: trials.length,
    exact: trials.filter(({ isExact }) => isExact).length,
    ...(Object.fromEntries(outcomes.map((outcome) => [outcome, of(outcome)])) as Record<
      TrialOutcome,
      number
    >),
    p50Ms: Math.round(median(cpuMs)),
    p95Ms: Math.round(quantile(cpuMs, 0.95)),
    realTimeFactor: Number(factor.toFixed(3)),
  };
}

/** Figures measured anew take the place of older ones of the same ear and condition, or ear, mode and seed. */
export function mergedFigures(before: Figures, now: Figures): Figures {
  const heardKey = ({ ear, condition }: HeardFigures): string => `${ear} ${condition}`;
  const overheardKey = ({ ear, mode, seed }: OverheardFigures): string => `${ear} ${mode} ${seed}`;
  return {
    heard: replaced(before.heard, now.heard, heardKey),
    overheard: replaced(before.overheard, now.overheard, overheardKey),
  };
}

function replaced<T>(before: readonly T[], now: readonly T[], keyOf: (each: T) => string): T[] {
  return [...new Map([...before, ...now].map((each) => [keyOf(each), each])).values()];
}
