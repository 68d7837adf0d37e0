import { describe, expect, it } from "vitest";
import { createEmbeddedEar } from "../../../core/speech/embedded-ear.ts";
import { createFakeTranscriber } from "../../voice/fake-transcriber.ts";
import { createFakeWordEngine } from "../../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";

const said = new Float32Array(16_000).fill(0.1);
const grammar = listenTo(grammarOf("next step"), { address: "listen kitchen", mode: "addressed" });
const noModel = { ok: false, error: "The speech model could not be loaded." } as const;

describe("the embedded ear", () => {
  it("[V57] listens with two ears where both can be loaded", async () => {
    const [transcriber, careful] = [createFakeTranscriber(), createFakeTranscriber()];
    const engine = createFakeWordEngine();
    const ear = createEmbeddedEar({
      quick: transcriber,
      careful,
      engine,
      breathe: () => Promise.resolve(),
    });
    expect(await ear.load()).toEqual({ ok: true, value: null });
    await ear.setGrammar(grammar);
    for (const each of [transcriber, careful]) each.willBelieve({ "listen kitchen next step": 0.99 });
    engine.willHear("listen kitchen");
    ear.accept(said);
    expect(await ear.end(null)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(engine.utterances).toEqual([]);
  });

  it("[V57] listens with the light one alone where the larger model cannot be loaded", async () => {
    const [transcriber, engine] = [createFakeTranscriber(), createFakeWordEngine()];
    const ear = createEmbeddedEar({
      quick: { ...transcriber, load: () => Promise.resolve(noModel) },
      careful: createFakeTranscriber(),
      engine,
      breathe: () => Promise.resolve(),
    });
    expect(await ear.load()).toEqual({ ok: true, value: null });
    expect(await ear.setGrammar(grammar)).toEqual({ ok: true, value: null });
    engine.willHear("<sil> listen kitchen next step");
    ear.accept(said);
    expect(ear.partial()).toEqual(["listen", "kitchen", "next", "step"]);
    expect((await ear.anticipate(50)).words).toEqual(["listen", "kitchen", "next", "step"]);
    expect(await ear.end(50)).toMatchObject({ kind: "command", words: ["next", "step"], addressed: true });
    expect(transcriber.takenIn).toEqual([]);
    ear.accept(said);
    await ear.forget();
    expect(await ear.end(null)).toEqual({ kind: "none", why: "chatter" });
    ear.free();
  });

  it("[V57] says why where the light one cannot be loaded either", async () => {
    const noEngine = { ok: false, error: "The recogniser could not be loaded." } as const;
    const ear = createEmbeddedEar({
      quick: { ...createFakeTranscriber(), load: () => Promise.resolve(noModel) },
      careful: createFakeTranscriber(),
      engine: { ...createFakeWordEngine(), load: () => Promise.resolve(noEngine) },
      breathe: () => Promise.resolve(),
    });
    expect(await ear.load()).toEqual(noEngine);
  });
});
