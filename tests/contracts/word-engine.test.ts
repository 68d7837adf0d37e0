import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { withoutFillers } from "../../core/speech/chatter.ts";
import type { WordEngine } from "../../core/speech/word-engine.ts";
import { createNodeEngine } from "../../server/hear/node-recogniser.ts";
import { createFakeWordEngine } from "../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../voice/grammars.ts";
import { spokenInRoom } from "../voice/spoken-in-room.ts";

const strange = ["next step", "zaatarxyz first", "jalapeño", "qwrtz", "12 日本", "it's o'clock"];

/** An engine, and how to make it hear a sentence: the real one is played a voice, the fake is told. */
type Subject = { readonly engine: WordEngine; readonly prepare: (text: string) => Promise<Float32Array> };

const adapters: readonly (readonly [name: string, make: () => Subject])[] = [
  [
    "fake",
    () => {
      const engine = createFakeWordEngine();
      return {
        engine,
        prepare: (text) => {
          engine.willHear(text);
          return Promise.resolve(new Float32Array(16_000));
        },
      };
    },
  ],
  ["embedded", () => ({ engine: createNodeEngine(), prepare: (text) => spokenInRoom("slt", text) })],
];

describe.each(adapters)("word engine contract: %s", (_name, make) => {
  const subject = make();
  const { engine } = subject;
  const hear = async (text: string): Promise<readonly string[]> => {
    const samples = await subject.prepare(text);
    for (let at = 0; at < samples.length; at += 320) engine.accept(samples.subarray(at, at + 320));
    return (await engine.end()).words.map(({ word }) => word);
  };

  beforeAll(async () => expect(await engine.load()).toEqual({ ok: true, value: null }));
  afterAll(() => engine.free());

  it("[V15] loading twice is loading once", async () => {
    expect(await engine.load()).toEqual({ ok: true, value: null });
  });

  it("[V4][V15] a grammar full of strange words loads, again and again", async () => {
    for (let round = 0; round < 3; round++) {
      expect(await engine.setGrammar(listenTo(grammarOf(...strange)))).toEqual({ ok: true, value: null });
    }
  });

  it("[V15] an utterance comes back as its words, in order, each with a place and a probability", async () => {
    await engine.setGrammar(listenTo(grammarOf("next step", "what is in the oven")));
    expect(withoutFillers(await hear("what is in the oven"))).toEqual(["what", "is", "in", "the", "oven"]);
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] ending without an utterance has no words, and there is no partial then", async () => {
    expect(await engine.end()).toEqual({ words: [] });
    expect(engine.partial()).toEqual([]);
  });

  it("[V15] forgetting drops the open utterance and keeps the grammar", async () => {
    await engine.setGrammar(listenTo(grammarOf("next step")));
    engine.accept(new Float32Array(3200));
    await engine.forget();
    expect(await engine.end()).toEqual({ words: [] });
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] reconsidering leaves the engine ready for the next utterance", async () => {
    await engine.setGrammar(listenTo(grammarOf("next step")));
    await engine.reconsider(await subject.prepare("next step"));
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });

  it("[V15] a new grammar drops the open utterance", async () => {
    engine.accept(new Float32Array(3200));
    await engine.setGrammar(listenTo(grammarOf("stop")));
    expect(await engine.end()).toEqual({ words: [] });
  });

  it("[V15] a grammar with a missing rule is refused and the one before goes on", async () => {
    await engine.setGrammar(listenTo(grammarOf("next step")));
    expect(await engine.setGrammar(listenTo({ root: "gone", rules: new Map() }))).toMatchObject({
      ok: false,
    });
    expect(withoutFillers(await hear("next step"))).toEqual(["next", "step"]);
  });
});
