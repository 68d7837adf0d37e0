import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { embeddedAcceptance } from "../../core/speech/acceptance.ts";
import { createJudgingRecogniser } from "../../core/speech/judging-recogniser.ts";
import type { Recogniser } from "../../core/speech/recogniser.ts";
import type { Verdict } from "../../core/speech/verdict.ts";
import { createNodeEngine, createNodeRecogniser } from "../../server/hear/node-recogniser.ts";
import { createFakeWordEngine } from "../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../voice/grammars.ts";
import { spokenInRoom } from "../voice/spoken-in-room.ts";

const strange = ["next step", "zaatarxyz first", "jalapeño", "qwrtz", "12 日本", "it's o'clock"];
const sentences = grammarOf("next step", "what is in the oven");

/** A recogniser, and how to make it hear a sentence: real ones are played a voice, the fake is told. */
type Subject = { readonly recogniser: Recogniser; readonly prepare: (text: string) => Promise<Float32Array> };

const played = (recogniser: Recogniser): Subject => ({
  recogniser,
  prepare: (text) => spokenInRoom("slt", text),
});

const adapters: readonly (readonly [name: string, make: () => Subject])[] = [
  [
    "a fake engine alone",
    () => {
      const engine = createFakeWordEngine();
      return {
        recogniser: createJudgingRecogniser(engine, embeddedAcceptance),
        prepare: (text) => {
          engine.willHear(text);
          return Promise.resolve(new Float32Array(16_000));
        },
      };
    },
  ],
  ["the light engine alone", () => played(createJudgingRecogniser(createNodeEngine(), embeddedAcceptance))],
  ["two ears", () => played(createNodeRecogniser())],
];

const chatter: Verdict = { kind: "none", why: "chatter" };

describe.each(adapters)("recogniser contract: %s", (_name, make) => {
  const subject = make();
  const { recogniser } = subject;
  const say = async (text: string): Promise<void> => {
    const samples = await subject.prepare(text);
    for (let at = 0; at < samples.length; at += 320) recogniser.accept(samples.subarray(at, at + 320));
  };
  const hear = async (text: string): Promise<Verdict> => {
    await say(text);
    return recogniser.end(null);
  };
  const command = (words: string, addressed = false): object => ({
    kind: "command",
    words: words.split(" "),
    rivals: [],
    addressed,
  });

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

  it("[V15] an utterance comes to a sentence of the grammar, with a confidence", async () => {
    await recogniser.setGrammar(listenTo(sentences));
    const verdict = await hear("what is in the oven");
    expect(verdict).toMatchObject(command("what is in the oven"));
    const confidence = verdict.kind === "command" ? verdict.confidence : 0;
    expect(confidence).toBeGreaterThan(0.6);
    expect(confidence).toBeLessThanOrEqual(1);
    expect(await hear("next step")).toMatchObject(command("next step"));
  });

  it("[V2][V15] the address is taken off a sentence, and alone it is heard as that", async () => {
    await recogniser.setGrammar(listenTo(sentences, { address: "listen kitchen", mode: "addressed" }));
    expect(await hear("listen kitchen next step")).toMatchObject(command("next step", true));
    expect(await hear("listen kitchen")).toEqual({ kind: "address-only" });
    expect(await hear("next step")).toMatchObject({ kind: "none" });
  });

  it("[V15] ending without an utterance is chatter, and there is no partial then", async () => {
    expect(await recogniser.end(null)).toEqual(chatter);
    expect(await recogniser.end(7)).toEqual(chatter);
    expect(recogniser.partial()).toEqual([]);
  });

  it("[V15] a pause that was thought about comes to the same, asked twice and ended", async () => {
    await recogniser.setGrammar(listenTo(sentences));
    await say("what is in the oven");
    const words = ["what", "is", "in", "the", "oven"];
    expect((await recogniser.anticipate(80)).words).toEqual(words);
    expect((await recogniser.anticipate(80)).words).toEqual(words);
    expect(recogniser.partial()).toEqual(words);
    expect(await recogniser.end(80)).toMatchObject({ kind: "command", words });
    expect(recogniser.partial()).toEqual([]);
  });

  it("[V15] forgetting drops the open utterance and keeps the grammar", async () => {
    await recogniser.setGrammar(listenTo(sentences));
    recogniser.accept(new Float32Array(3200));
    await recogniser.forget();
    expect(await recogniser.end(null)).toEqual(chatter);
    expect(await hear("next step")).toMatchObject(command("next step"));
  });

  it("[V15] a new grammar drops the open utterance", async () => {
    await say("next step");
    await recogniser.setGrammar(listenTo(grammarOf("stop")));
    expect(await recogniser.end(null)).toEqual(chatter);
  });

  it("[V15] a grammar with a missing rule is refused and the one before goes on", async () => {
    await recogniser.setGrammar(listenTo(sentences));
    expect(await recogniser.setGrammar(listenTo({ root: "gone", rules: new Map() }))).toMatchObject({
      ok: false,
    });
    expect(await hear("next step")).toMatchObject(command("next step"));
  });
});
