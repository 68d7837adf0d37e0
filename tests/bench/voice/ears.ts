import { embeddedAcceptance } from "../../../core/speech/acceptance.ts";
import { createJudgingRecogniser } from "../../../core/speech/judging-recogniser.ts";
import type { ListenFor, Recogniser } from "../../../core/speech/recogniser.ts";
import type { Verdict } from "../../../core/speech/verdict.ts";
import { openNodeHearing } from "../../../server/hear/node-hearing.ts";
import { createNodeEngine, createNodeRecogniser } from "../../../server/hear/node-recogniser.ts";

/** The ears that can be had without a model of the cook's own. */
export const ears: Readonly<Record<string, () => Recogniser>> = {
  two: createNodeRecogniser,
  light: () => createJudgingRecogniser(createNodeEngine(), embeddedAcceptance),
};

/** An ear with its endpointer before it, as in the page. */
export type OpenEar = {
  readonly listenFor: (what: ListenFor) => Promise<void>;
  /** What a sound came to, utterance by utterance; the ear is as new for each sound. */
  readonly hear: (sound: Float32Array) => Promise<readonly Verdict[]>;
  readonly free: () => void;
};

/** Loads one. */
export async function openEar(name: string): Promise<OpenEar> {
  const recogniser = ears[name]?.();
  if (recogniser === undefined)
    throw new Error(`There is no ear "${name}": give ${Object.keys(ears).join(" or ")}.`);
  const opened = await openNodeHearing(recogniser);
  if (!opened.ok) throw new Error(opened.error);
  const { hearing, hasDetector, free } = opened.value;
  if (!hasDetector) throw new Error("The voice detector could not be loaded.");
  return {
    listenFor: async (what) => {
      const set = await hearing.listenFor(what, "after-utterance");
      if (!set.ok) throw new Error(set.error);
    },
    hear: async (sound) => {
      await hearing.reset();
      const events = [...(await hearing.accept(sound)), ...(await hearing.finish())];
      return events.flatMap((event) => (event.kind === "heard" ? [event.verdict] : []));
    },
    free,
  };
}
