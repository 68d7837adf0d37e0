import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type NodeHearing, openNodeHearing } from "../../server/hear/node-hearing.ts";
import { createVoice } from "../../server/voice/create-voice.ts";
import { callersSentences, overhearOneself } from "./own-voice.ts";

const voice = createVoice();
let ear: NodeHearing;

beforeAll(async () => {
  const opened = await openNodeHearing();
  if (!opened.ok) throw new Error(opened.error);
  ear = opened.value;
});
afterAll(async () => {
  ear.free();
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
      const { spokenS, obeyed } = await overhearOneself(ear.hearing, sentences, { by: voice, name }, how);
      expect(spokenS).toBeGreaterThan(30);
      expect(obeyed).toEqual([]);
    },
  );
});
