import { err, ok, type Result } from "../units/result.ts";
import { type Acceptance, judge } from "./acceptance.ts";
import { withoutFillers } from "./chatter.ts";
import type { Expectation } from "./expectation.ts";
import type { ListenFor } from "./recogniser.ts";
import { grammarOfSentences } from "./transcribe/grammar-of-sentences.ts";
import type { WordEngine } from "./word-engine.ts";

/** The ear that knows how words sound, asked about a whole utterance. */
export type SecondOpinion = {
  /** Loads the engine; until then, and where it cannot be loaded, it says nothing. */
  readonly load: () => Promise<void>;
  /** Which of a few whole sentences, the address in them, it sounds most like; null where it cannot say. */
  readonly among: (
    sentences: readonly (readonly string[])[],
    utterance: Float32Array,
    expected: Expectation,
  ) => Promise<readonly string[] | null>;
  /** What sentence of all, the address before it, it sounds like; null where it is none that it would act on. */
  readonly ofAll: (utterance: Float32Array, expected: Expectation) => Promise<readonly string[] | null>;
};

/** Puts questions to a word engine; its grammar is changed only when another question comes. */
export function createSecondOpinion(engine: WordEngine, acceptance: Acceptance): SecondOpinion {
  let set: ListenFor | null = null;
  let isLoaded = false;
  const give = async (what: ListenFor): Promise<Result<null, string>> => {
    if (!isLoaded) return err("The second ear is not there yet.");
    if (set === what) return ok(null);
    const given = await engine.setGrammar(what);
    set = given.ok ? what : null;
    return given;
  };
  return {
    load: async () => {
      isLoaded = (await engine.load()).ok;
    },
    among: async (sentences, utterance, { what }) => {
      const grammar = grammarOfSentences(sentences);
      const given = await give({ ...what, grammar, address: null, mode: "open", stopSentences: [] });
      if (!given.ok) return null;
      const { words } = await engine.reconsider(utterance);
      return withoutFillers(words.map(({ word }) => word));
    },
    ofAll: async (utterance, { what, address }) => {
      if (!(await give(what)).ok) return null;
      const verdict = judge(await engine.reconsider(utterance), what.address, what.mode, acceptance);
      if (verdict.kind !== "command") return null;
      return verdict.addressed ? [...address, ...verdict.words] : verdict.words;
    },
  };
}
