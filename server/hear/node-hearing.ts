import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import { createHearing, type Hearing } from "../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../core/speech/hearing-settings.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import { ok, type Result } from "../../core/units/result.ts";
import { createNodeRecogniser } from "./node-recogniser.ts";
import { loadNodeVoiceDetector } from "./node-voice-detector.ts";

/** An ear that hears streams, as in the page. */
export type NodeHearing = {
  readonly hearing: Hearing;
  /** Without it the level alone tells where speech begins and ends. */
  readonly hasDetector: boolean;
  /** Gives recogniser and detector back; nothing may be heard afterwards. */
  readonly free: () => void;
};

/**
 * Loads a recogniser, all of it, and the voice detector before it. Fails with one sentence where the recogniser cannot
 * be loaded.
 * @param recogniser the one that comes with the program, where no other is given
 */
export async function openNodeHearing(
  recogniser: Recogniser = createNodeRecogniser(),
): Promise<Result<NodeHearing, string>> {
  const loaded = await recogniser.load();
  if (!loaded.ok) return loaded;
  await recogniser.whole();
  const detector = await loadNodeVoiceDetector();
  return ok({
    hearing: createHearing(
      { recogniser, detector },
      { ...defaultHearingTimes, endpointer: defaultEndpointer },
    ),
    hasDetector: detector !== null,
    free: () => {
      recogniser.free();
      void detector?.free();
    },
  });
}
