import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { defaultEndpointer } from "../../core/speech/endpointer.ts";
import { createHearing, type Hearing } from "../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../core/speech/hearing-settings.ts";
import { createNodeRecogniser } from "../../server/hear/node-recogniser.ts";
import { loadNodeVoiceDetector } from "../../server/hear/node-voice-detector.ts";
import { createVoice } from "../../server/voice/create-voice.ts";
import { callersSentences, overhearOneself } from "./own-voice.ts";

const recogniser = createNodeRecogniser();
const voice = createVoice();
let hearing: Hearing;

beforeAll(async () => {
  expect(await recogniser.load()).toEqual({ ok: true, value: null });
  const settings = { ...defaultHearingTimes, endpointer: defaultEndpointer };
  hearing = createHearing({ recogniser, detector: await loadNodeVoiceDetector() }, settings);
});
afterAll(async () => {
  recogniser.free();
  await voice.close();
});

describe("the caller's own voice in its ear", () => {
  // Half an hour of it each is tests/bench/own-voice.bench.ts.
  it.each([
    ["slt", "clean"],
    ["rms", "room"],
  ] as const)(
    "[V77] half a minute of its sentences (%s, %s), and none is obeyed, while it speaks or after",
    async (name, place) => {
      const sentences = await callersSentences();
      expect(sentences.length).toBeGreaterThan(200);
      const how = { place, seed: 77, seconds: 30 };
      const { spokenS, obeyed } = await overhearOneself(hearing, sentences, { by: voice, name }, how);
      expect(spokenS).toBeGreaterThan(30);
      expect(obeyed).toEqual([]);
    },
  );
});
