import { toAutomaton } from "../../core/speech/automaton.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import type { Hypothesis, WordEngine } from "../../core/speech/word-engine.ts";
import { ok } from "../../core/units/result.ts";

/** An engine that is told what it hears, and remembers what was asked of it. */
export type FakeWordEngine = WordEngine & {
  readonly asked: readonly ListenFor[];
  /** Samples taken in each utterance so far. */
  readonly utterances: readonly number[];
  /** What the next utterances will say, each once this many samples of it have come. */
  readonly willHear: (text: string, afterSamples?: number) => void;
  /** What it makes of a whole utterance that it hears once more; nothing unless this was told. */
  readonly willReconsider: (text: string) => void;
  /** How often it was asked to hear a whole utterance once more. */
  readonly reconsidered: () => number;
};

/** Makes one; it loads at once and takes every grammar that can be written. */
export function createFakeWordEngine(): FakeWordEngine {
  const asked: ListenFor[] = [];
  const utterances: number[] = [];
  let isOpen = false;
  let text = "";
  let again = "";
  let reconsidered = 0;
  let after = 0;
  const words = (): readonly string[] =>
    isOpen && (utterances.at(-1) ?? 0) > after ? text.split(" ").filter(Boolean) : [];
  return {
    asked,
    utterances,
    reconsidered: () => reconsidered,
    willHear: (next, afterSamples = 0) => {
      text = next;
      after = afterSamples;
    },
    willReconsider: (next) => {
      again = next;
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
      const hypothesis = heardAs(words());
      isOpen = false;
      return Promise.resolve(hypothesis);
    },
    reconsider: () => {
      reconsidered++;
      return Promise.resolve(heardAs(again.split(" ").filter(Boolean)));
    },
    forget: () => {
      isOpen = false;
      return Promise.resolve();
    },
    free: () => undefined,
  };
}

/** Words one after another, each 0.3 s long and all but certain. */
function heardAs(words: readonly string[]): Hypothesis {
  return {
    words: words.map((word, at) => ({ word, startS: at * 0.3, lengthS: 0.3, probability: 0.99 })),
  };
}
