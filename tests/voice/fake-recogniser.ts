import type { Hypothesis, ListenFor, Recogniser } from "../../core/speech/recogniser.ts";
import { toAutomaton } from "../../core/speech/automaton.ts";
import { ok } from "../../core/units/result.ts";

/** A recogniser that is told what it hears, and remembers what was asked of it. */
export type FakeRecogniser = Recogniser & {
  readonly asked: readonly ListenFor[];
  /** Samples taken in each utterance so far. */
  readonly utterances: readonly number[];
  /** What the next utterance will say, once this many samples of it have come. */
  readonly willHear: (text: string, afterSamples?: number) => void;
};

/** Makes one; it loads at once and takes every grammar that can be written. */
export function createFakeRecogniser(): FakeRecogniser {
  const asked: ListenFor[] = [];
  const utterances: number[] = [];
  let isOpen = false;
  let text = "";
  let after = 0;
  const words = (): readonly string[] =>
    isOpen && (utterances.at(-1) ?? 0) > after ? text.split(" ").filter(Boolean) : [];
  return {
    asked,
    utterances,
    willHear: (next, afterSamples = 0) => {
      text = next;
      after = afterSamples;
    },
    load: () => Promise.resolve(ok(null)),
    setGrammar: (listenFor) => {
      isOpen = false;
      const automaton = toAutomaton(listenFor);
      if (!automaton.ok) return Promise.resolve(automaton);
      asked.push(listenFor);
      return Promise.resolve(ok(null));
    },
    accept: (samples) => {
      if (!isOpen) utterances.push(0);
      isOpen = true;
      utterances[utterances.length - 1] = (utterances.at(-1) ?? 0) + samples.length;
    },
    partial: words,
    end: () => {
      const hypothesis: Hypothesis = {
        words: words().map((word, at) => ({ word, startS: at * 0.3, lengthS: 0.3, probability: 0.99 })),
      };
      isOpen = false;
      return Promise.resolve(hypothesis);
    },
    reconsider: () => Promise.resolve({ words: [] }),
    forget: () => {
      isOpen = false;
      return Promise.resolve();
    },
    free: () => undefined,
  };
}
