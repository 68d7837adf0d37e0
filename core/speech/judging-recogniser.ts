import type { Acceptance } from "./acceptance.ts";
import { withoutFillers } from "./chatter.ts";
import { type Expectation, expectation, verdictOn } from "./expectation.ts";
import type { Recogniser } from "./recogniser.ts";
import { joinSamples, listeningRate } from "./samples.ts";
import type { WordEngine } from "./word-engine.ts";

/** An utterance up to this long that came to nothing is heard once more as a whole; commands are no longer. */
const reconsiderS = 6;

/**
 * A recogniser of one engine alone: its words count when its own probabilities are high enough.
 * @param acceptance the limits of that engine
 */
export function createJudgingRecogniser(engine: WordEngine, acceptance: Acceptance): Recogniser {
  let expected: Expectation | null = null;
  let heard: Float32Array[] = [];
  const partial = (): readonly string[] => withoutFillers(engine.partial());
  return {
    load: engine.load,
    whole: () => Promise.resolve(),
    setGrammar: async (what) => {
      heard = [];
      const set = await engine.setGrammar(what);
      if (set.ok) expected = expectation(what);
      return set;
    },
    accept: (samples) => {
      heard.push(samples);
      engine.accept(samples);
    },
    mayBegin: () => undefined,
    partial,
    anticipate: () => Promise.resolve({ words: partial(), isAll: true }),
    goOn: () => undefined,
    end: async () => {
      const hypothesis = await engine.end();
      const utterance = joinSamples(heard);
      heard = [];
      if (expected === null || utterance.length === 0) return { kind: "none", why: "chatter" };
      const first = verdictOn(expected, hypothesis, acceptance);
      if (first.kind !== "none" || utterance.length > reconsiderS * listeningRate) return first;
      const second = verdictOn(expected, await engine.reconsider(utterance), acceptance);
      return second.kind === "none" ? first : second;
    },
    forget: async () => {
      heard = [];
      await engine.forget();
    },
    free: engine.free,
  };
}
