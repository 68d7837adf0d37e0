import { readFileSync } from "node:fs";
import { beforeAll, afterAll, describe, expect, it } from "vitest";
import { withoutFillers } from "../../core/speech/chatter.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import { resample } from "../../core/speech/resample.ts";
import { joinSamples } from "../../core/speech/samples.ts";
import { parseWav } from "../../core/speech/wav.ts";
import { createNodeRecogniser } from "../../server/hear/node-recogniser.ts";
import { createFakeRecogniser } from "../voice/fake-recogniser.ts";
import { speak } from "../voice/synthetic-voices.ts";
import { grammarOf, listenTo } from "../voice/grammars.ts";

const strange = ["next step", "zaatarxyz first", "jalapeño", "qwrtz", "12 日本", "it's o'clock"];

/** 300 ms of a quiet room, faint and regular. */
const room = Float32Array.from({ length: 4800 }, (_, at) => 1e-4 * Math.sin(at * 1.7) * Math.sin(at * 0.37));

/** An engine, and how to make it hear a sentence: the real one is played a voice, the fake is told. */
type Subject = { readonly recogniser: Recogniser; readonly prepare: (text: string) => Promise<Float32Array> };

const adapters: readonly (readonly [name: string, make: () => Subject])[] = [
  [
    "fake",
    () => {
      const recogniser = createFakeRecogniser();
      return {
        recogniser,
        prepare: (text) => {
          recogniser.willHear(text);
          return Promise.resolve(new Float32Array(16_000));
        },
      };
    },
  ],
  [
    "embedded",
    () => ({
      recogniser: createNodeRecogniser(),
      prepare: async (text) => {
        const [path = ""] = await speak("slt", [text]);
        const recording = parseWav(readFileSync(path));
        if (!recording.ok) throw new Error(recording.error);
        // As the endpointer hands an utterance over: with some of the room before and after it.
        return joinSamples([room, resample(recording.value.samples, recording.value.rate, 16_000), room]);
      },
    }),
  ],
];

describe.each(adapters)("recogniser contract: %s", (_name, make) => {
  const subject = make();
  const { recogniser } = subject;
  const hear = async (text: string): Promise<readonly string[]> => {
    const samples = await subject.prepare(text);
    for (let at = 0; at < samples.length; at += 320) recogniser.accept(samples.subarray(at, at + 320));
    return (await recogniser.end()).words.map(({ word }) => word);
  };

  beforeAll(async () => expect(await recogniser.load()).toEqual({ ok: true, value: null }));
  afterAll(() => recogniser.free());

  it("[V15] loading twice is loading once", async () => {
    expect(await recogniser.load()).toEqual({ ok: true, value: null });
  });

  it("[V4][V15] a grammar full of strange words loads, again and again", async () => {
    for (let round = 0; round < 3; round++) {
      expect(await recogniser.setGrammar(listenTo(grammarOf(...strange)))).toEqual({ ok: true, value: null });
    }
  });

  it("[V15] an utterance comes back as its words, in order, each with a place and a probability", async () => {
    await recogniser.setGrammar(listenTo(grammarOf("next step", "what is in the oven")));
    expect(withoutFillers(await hear("what is in the oven"))).toEqual(["what", "is", "in", "the", "oven"]);
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] ending without an utterance has no words, and there is no partial then", async () => {
    expect(await recogniser.end()).toEqual({ words: [] });
    expect(recogniser.partial()).toEqual([]);
  });

  it("[V15] forgetting drops the open utterance and keeps the grammar", async () => {
    await recogniser.setGrammar(listenTo(grammarOf("next step")));
    recogniser.accept(new Float32Array(3200));
    await recogniser.forget();
    expect(await recogniser.end()).toEqual({ words: [] });
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] reconsidering leaves the engine ready for the next utterance", async () => {
    await recogniser.setGrammar(listenTo(grammarOf("next step")));
    await recogniser.reconsider(await subject.prepare("next step"));
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] a new grammar drops the open utterance", async () => {
    recogniser.accept(new Float32Array(3200));
    await recogniser.setGrammar(listenTo(grammarOf("stop")));
    expect(await recogniser.end()).toEqual({ words: [] });
  });

  it("[V15] a grammar with a missing rule is refused and the one before goes on", async () => {
    await recogniser.setGrammar(listenTo(grammarOf("next step")));
    expect(await recogniser.setGrammar(listenTo({ root: "gone", rules: new Map() }))).toMatchObject({
      ok: false,
    });
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });
});
