import { defaultEndpointer } from "../endpointer.ts";
import type { SentenceLevels } from "../sentence-levels.ts";
import type { CheckSentence } from "./check-sentences.ts";
import { type CheckedUtterance, judgeSentence, type Outcome } from "./judge-sentence.ts";

/** What became of one sentence, and how it sounded; null where it was not heard at all. */
export type CheckResult = { readonly outcome: Outcome; readonly levels: SentenceLevels | null };

/** A check of the ear. Moments are milliseconds on any one clock, handed in by the shell. */
export type EarCheck = {
  readonly address: string;
  readonly sentences: readonly CheckSentence[];
  readonly startedAt: number;
  /** The level that never stopped in each second, dBFS in the speech band. */
  readonly floorsDb: readonly number[];
  /** Of the sentences so far; the one that is shown last has none while it is waited for. */
  readonly results: readonly CheckResult[];
  readonly phase:
    | { readonly kind: "waiting"; readonly since: number; readonly levels: SentenceLevels | null }
    /** The last result is shown; the next sentence follows. */
    | { readonly kind: "shown"; readonly since: number }
    | { readonly kind: "over" };
};

/** What happens in a check. */
export type CheckInput =
  | {
      readonly kind: "heard";
      readonly utterance: CheckedUtterance;
      readonly beganAt: number;
      readonly now: number;
    }
  /** `hold`: somebody speaks, the caller or the cook, and nobody is hurried. */
  | { readonly kind: "time"; readonly now: number; readonly hold: "yes" | "no" }
  /** A second of the room is over. */
  | { readonly kind: "room"; readonly floorDb: number }
  | { readonly kind: "again"; readonly now: number }
  | { readonly kind: "leave-out"; readonly now: number }
  | { readonly kind: "finish" };

/** How long things take, in ms. All five unheard and shown come to 84 s; whatever happens it is over in two minutes. */
export const checkTimes = {
  /** For a sentence to be said. */
  wait: 13_000,
  /** Nobody is waited for longer, though somebody speaks: it may be the radio. */
  longestWait: 20_000,
  rightShown: 1_300,
  /** Long enough to read what was heard, and to say it again. */
  wrongShown: 3_800,
  longestShown: 10_000,
  whole: 118_000,
} as const;

/** The start: the first sentence is waited for. */
export function beginCheck(address: string, sentences: readonly CheckSentence[], now: number): EarCheck {
  return {
    address,
    sentences,
    startedAt: now,
    floorsDb: [],
    results: [],
    phase: { kind: "waiting", since: now, levels: null },
  };
}

/** The sentence on the screen, from 0; the last one when all is over. */
export const sentenceNow = ({ results, phase, sentences }: EarCheck): number =>
  Math.min(sentences.length - 1, phase.kind === "waiting" ? results.length : results.length - 1);

/** The next state. Total: what makes no sense now changes nothing. */
export function evolveCheck(check: EarCheck, input: CheckInput): EarCheck {
  const { phase } = check;
  if (phase.kind === "over") return check;
  switch (input.kind) {
    case "heard":
      return isOfBefore(check, input.beganAt) ? check : afterHeard(check, input.utterance, input.now);
    case "time":
      return afterTime(check, input.now, input.hold);
    case "room":
      return { ...check, floorsDb: [...check.floorsDb, input.floorDb] };
    case "again":
      return waitFor(check, phase.kind === "shown" ? check.results.slice(0, -1) : check.results, input.now);
    case "leave-out": {
      const before = phase.kind === "shown" ? check.results.slice(0, -1) : check.results;
      return goOn(
        { ...check, results: [...before, { outcome: { kind: "left-out" }, levels: null }] },
        input.now,
      );
    }
    case "finish":
      return { ...check, phase: { kind: "over" } };
  }
}

/**
 * A slow machine answers late, and meanwhile the cook says the sentence again: what began before this one was shown
 * says nothing about it.
 */
const isOfBefore = ({ phase, results }: EarCheck, beganAt: number): boolean =>
  phase.kind === "waiting" && results.length > 0 && beganAt < phase.since - defaultEndpointer.preRollMs;

function afterHeard(check: EarCheck, utterance: CheckedUtterance, now: number): EarCheck {
  const { phase, results, address } = check;
  const sentence = check.sentences[sentenceNow(check)];
  // The address alone: the sentence follows, and comes with the address before it.
  if (phase.kind === "over" || sentence === undefined || utterance.verdict.kind === "address-only")
    return check;
  const outcome = judgeSentence(sentence.words, address, utterance);
  const { levels } = utterance;
  if (phase.kind === "shown") {
    // Said once more of the cook's own accord: it counts where it went better.
    return outcome.kind === "right" && results.at(-1)?.outcome.kind !== "right"
      ? {
          ...check,
          results: [...results.slice(0, -1), { outcome, levels }],
          phase: { kind: "shown", since: now },
        }
      : check;
  }
  // A clatter, or a voice too soft for words: it is waited on, and its level remembered.
  if (outcome.kind === "nothing") return { ...check, phase: { ...phase, levels: levels ?? phase.levels } };
  return { ...check, results: [...results, { outcome, levels }], phase: { kind: "shown", since: now } };
}

function afterTime(check: EarCheck, now: number, hold: "yes" | "no"): EarCheck {
  const { phase, results } = check;
  if (now - check.startedAt >= checkTimes.whole) return { ...check, phase: { kind: "over" } };
  if (phase.kind === "waiting") {
    const limit = hold === "yes" ? checkTimes.longestWait : checkTimes.wait;
    if (now - phase.since < limit) return check;
    const result: CheckResult = { outcome: { kind: "nothing" }, levels: phase.levels };
    return { ...check, results: [...results, result], phase: { kind: "shown", since: now } };
  }
  if (phase.kind === "over") return check;
  const isRight = results.at(-1)?.outcome.kind === "right";
  const limit =
    hold === "yes" ? checkTimes.longestShown : isRight ? checkTimes.rightShown : checkTimes.wrongShown;
  return now - phase.since < limit ? check : goOn(check, now);
}

const goOn = (check: EarCheck, now: number): EarCheck =>
  check.results.length >= check.sentences.length
    ? { ...check, phase: { kind: "over" } }
    : waitFor(check, check.results, now);

const waitFor = (check: EarCheck, results: readonly CheckResult[], now: number): EarCheck => ({
  ...check,
  results,
  phase: { kind: "waiting", since: now, levels: null },
});
