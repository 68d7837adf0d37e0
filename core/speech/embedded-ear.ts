import { embeddedAcceptance } from "./acceptance.ts";
import { createJudgingRecogniser } from "./judging-recogniser.ts";
import type { Recogniser } from "./recogniser.ts";
import { createTwoEars, type TwoEarsParts } from "./two-ears.ts";

/** The embedded recogniser's parts; its limits are known. */
export type EmbeddedEarParts = Omit<TwoEarsParts, "acceptance">;

/**
 * The recogniser that comes with the program: two ears, or, where the larger model cannot be loaded (an old browser,
 * too little memory), the light one alone, which is always to be had.
 */
export function createEmbeddedEar(parts: EmbeddedEarParts): Recogniser {
  const light = createJudgingRecogniser(parts.engine, embeddedAcceptance);
  let ear: Recogniser = createTwoEars({ ...parts, acceptance: embeddedAcceptance });
  return {
    load: async () => {
      if ((await ear.load()).ok) return { ok: true, value: null };
      ear = light;
      return light.load();
    },
    whole: () => ear.whole(),
    setGrammar: (what) => ear.setGrammar(what),
    accept: (samples) => ear.accept(samples),
    mayBegin: (samplesAgo) => ear.mayBegin(samplesAgo),
    partial: () => ear.partial(),
    anticipate: (pause) => ear.anticipate(pause),
    goOn: () => ear.goOn(),
    end: (pause) => ear.end(pause),
    forget: () => ear.forget(),
    free: () => ear.free(),
  };
}
