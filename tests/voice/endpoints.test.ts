import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import { createHearing } from "../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../core/speech/hearing-settings.ts";
import { createJudgingRecogniser } from "../../core/speech/judging-recogniser.ts";
import { frameMs, frameSamples, listeningRate } from "../../core/speech/samples.ts";
import type { VoiceDetector } from "../../core/speech/voice-detector.ts";
import { loadNodeVoiceDetector } from "../../server/hear/node-voice-detector.ts";
import { spanOfSpeech } from "./active-level.ts";
import { createFakeWordEngine } from "./fake-word-engine.ts";
import { grammarOf, listenTo } from "./grammars.ts";
import { withSurroundings } from "./mix.ts";
import { makeNoise, type NoiseKind, seeds } from "./noises.ts";
import { spokenDry } from "./spoken-in-room.ts";
import { voices } from "./synthetic-voices.ts";

let detector: VoiceDetector | null;
beforeAll(async () => {
  detector = await loadNodeVoiceDetector();
  expect(detector).not.toBeNull();
});
afterAll(() => detector?.free());

const acceptance = { address: 0, addressed: 0, open: 0, stopOnly: 0 };

/** Where utterances begin and end in a sound, in frames; what was said does not matter. */
async function utterancesIn(sound: Float32Array): Promise<readonly (readonly [from: number, to: number])[]> {
  const recogniser = createJudgingRecogniser(createFakeWordEngine(), acceptance);
  const settings = { ...defaultHearingTimes, endpointer: defaultEndpointer };
  const hearing = createHearing({ recogniser, detector }, settings);
  await hearing.listenFor(listenTo(grammarOf("next step")), "after-utterance");
  await hearing.reset();
  const events = [...(await hearing.accept(sound)), ...(await hearing.finish())];
  return events.flatMap((event) =>
    event.kind === "heard" ? [[event.startedAtFrame, event.endedAtFrame] as const] : [],
  );
}

const leadS = 2;
/**
 * In frames. The sound of an utterance goes on for the shortest quiet that ends one, so so much may pass for quiet
 * and nothing is lost; and 400 ms after its last word it is over.
 */
const within = { quiet: defaultHearingTimes.hangoverMs.finished / frameMs, after: 20 };

describe("where utterances begin and end", () => {
  it.each<readonly [NoiseKind, number]>([
    ["extractor fan", 10],
    ["running tap", 10],
    ["frying", 20],
    ["clatter", 10],
  ])(
    "[V67] under noise (%s, the voice %i dB above it) each of seven voices is found whole",
    async (kind, snrDb) => {
      const noise = makeNoise(kind, 8, seeds.check[2]);
      for (const voice of voices) {
        const speech = await spokenDry(voice, "listen kitchen, what is next");
        const found = await utterancesIn(withSurroundings(speech, noise, { leadS, tailS: 1.5, snrDb }));
        expect(found, voice).toHaveLength(1);
        const [[from, to] = [NaN, NaN]] = found;
        const [first, last] = spanOfSpeech(speech).map((at) => (at + leadS * listeningRate) / frameSamples);
        expect(from, voice).toBeLessThanOrEqual(first ?? NaN);
        expect(to, voice).toBeGreaterThanOrEqual((last ?? NaN) - within.quiet);
        expect(to, voice).toBeLessThan((last ?? NaN) + within.after);
      }
    },
  );

  it.each<NoiseKind>(["extractor fan", "running tap", "frying", "clatter"])(
    "[V67] half a minute of noise alone (%s) begins no utterance",
    async (kind) => {
      const noise = makeNoise(kind, 30, seeds.check[3]);
      expect(await utterancesIn(noise.map((sample) => sample * 0.5))).toEqual([]);
    },
  );
});
