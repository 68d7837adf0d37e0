import { describe, expect, it } from "vitest";
import type { OnnxRuntime, OnnxTensor } from "../../../../core/speech/onnx.ts";
import {
  createOnnxTranscriber,
  type OnnxParts,
} from "../../../../core/speech/transcribe/onnx-transcriber.ts";
import { FakeTensor, type Feeds, numbersIn } from "../../../voice/fake-onnx.ts";

const tokens = { texts: ["a", "<s>", "</s>"], first: 1, last: 2 };
const encoder = Uint8Array.of(1);
/** Like every network that comes from a file, one message: its version. */
const decoder = Uint8Array.of(8, 10);

const rowsOf = (tensor: OnnxTensor | undefined): readonly (readonly number[])[] => {
  const all = numbersIn(tensor);
  const size = all.length / (tensor?.dims[0] ?? 1);
  return Array.from({ length: tensor?.dims[0] ?? 0 }, (_, row) => all.slice(row * size, (row + 1) * size));
};

/** What the two networks were given, in order. */
type Seen = { readonly encoder: Feeds[]; readonly decoder: Feeds[]; released: number };

const memoryNames = ["decoder.key", "decoder.value", "encoder.key", "encoder.value"].map(
  (name) => `past_key_values.0.${name}`,
);

/**
 * A decoder whose memory of the text is the tokens so far and whose odds are the same, so that a draft which went on
 * from another's memory shows; and which, as the real one, answers memory of the sound only the first time.
 */
function decode(feeds: Feeds): Record<string, OnnxTensor> {
  const before = rowsOf(feeds["past_key_values.0.decoder.key"]);
  const next = numbersIn(feeds["input_ids"]);
  const grown = next.map((token, row) => [...(before[row] ?? []), token]);
  const length = grown[0]?.length ?? 0;
  const text = new FakeTensor("float32", Float32Array.from(grown.flat()), [next.length, 1, length, 1]);
  const isFirst = numbersIn(feeds["use_cache_branch"])[0] === 0;
  const sound = new FakeTensor("float32", Float32Array.from(isFirst ? [7, 8, 9] : []), [
    isFirst ? 1 : 0,
    1,
    3,
    1,
  ]);
  const odds = grown.map((draft) => [Number(draft.join("")), draft.length]);
  return {
    logits: new FakeTensor("float32", Float32Array.from(odds.flat()), [next.length, 1, 2]),
    "present.0.decoder.key": text,
    "present.0.decoder.value": text,
    "present.0.encoder.key": sound,
    "present.0.encoder.value": sound,
  };
}

function fakeRuntime(names: readonly string[] = memoryNames): { runtime: OnnxRuntime; seen: Seen } {
  const seen: Seen = { encoder: [], decoder: [], released: 0 };
  const runtime: OnnxRuntime = {
    Tensor: FakeTensor,
    InferenceSession: {
      create: (model) =>
        Promise.resolve({
          inputMetadata: names.map((name) => ({ name, isTensor: true, shape: ["batch", 1, "length", 1] })),
          run: (feeds) => {
            const isEncoder = model === encoder;
            seen[isEncoder ? "encoder" : "decoder"].push(feeds);
            return Promise.resolve(
              isEncoder
                ? { last_hidden_state: new FakeTensor("float32", Float32Array.of(3, 4), [1, 2, 1]) }
                : decode(feeds),
            );
          },
          release: () => {
            seen.released++;
            return Promise.resolve();
          },
        }),
    },
  };
  return { runtime, seen };
}

async function loaded() {
  const { runtime, seen } = fakeRuntime();
  const transcriber = createOnnxTranscriber(() => Promise.resolve({ runtime, encoder, decoder, tokens }));
  expect(await transcriber.load()).toEqual({ ok: true, value: null });
  return { transcriber, seen };
}

const odds = (rows: readonly Float32Array[]): readonly (readonly number[])[] => rows.map((row) => [...row]);

describe("a transcriber of two networks", () => {
  it("[V55] each draft goes on from its own parent's memory, however they are mixed", async () => {
    const { transcriber } = await loaded();
    const writing = (await transcriber.takeIn(new Float32Array(3))).write();
    expect(odds(await writing.step([0], [1]))).toEqual([[1, 1]]);
    expect(odds(await writing.step([0, 0], [5, 6]))).toEqual([
      [15, 2],
      [16, 2],
    ]);
    expect(odds(await writing.step([1, 0, 1], [7, 8, 9]))).toEqual([
      [167, 3],
      [158, 3],
      [169, 3],
    ]);
    expect(odds(await writing.step([2], [4]))).toEqual([[1694, 4]]);
  });

  it("[V55] what is known of the sound is kept from the first step, once for all drafts", async () => {
    const { transcriber, seen } = await loaded();
    const writing = (await transcriber.takeIn(new Float32Array(3))).write();
    await writing.step([0], [1]);
    await writing.step([0, 0], [5, 6]);
    await writing.step([0, 1, 1], [5, 6, 7]);
    expect(seen.decoder.map((feeds) => numbersIn(feeds["use_cache_branch"]))).toEqual([[0], [1], [1]]);
    expect(numbersIn(seen.decoder[0]?.["past_key_values.0.encoder.key"])).toEqual([]);
    for (const feeds of seen.decoder.slice(1)) {
      for (const name of ["key", "value"]) {
        const kept = feeds[`past_key_values.0.encoder.${name}`];
        expect(kept?.dims).toEqual([1, 1, 3, 1]);
        expect(rowsOf(kept)).toEqual([[7, 8, 9]]);
      }
      expect(rowsOf(feeds["encoder_hidden_states"])).toEqual([[3, 4]]);
    }
  });

  it("[V55] a run to warm up goes through both networks and leaves nothing behind", async () => {
    const { transcriber, seen } = await loaded();
    await transcriber.warmUp();
    expect(seen.encoder).toHaveLength(1);
    expect(seen.decoder.length).toBeGreaterThan(5);
    const writing = (await transcriber.takeIn(new Float32Array(3))).write();
    expect(odds(await writing.step([0], [1]))).toEqual([[1, 1]]);
  });

  it("[V55] an utterance is taken in once, whole, and may be written down twice", async () => {
    const { transcriber, seen } = await loaded();
    const sound = await transcriber.takeIn(Float32Array.of(0.5, -0.25, 0.125));
    const one = sound.write();
    const other = sound.write();
    await one.step([0], [1]);
    await one.step([0], [5]);
    expect(odds(await other.step([0], [1]))).toEqual([[1, 1]]);
    expect(odds(await one.step([0], [6]))).toEqual([[156, 3]]);
    expect(seen.encoder).toHaveLength(1);
    expect(seen.encoder[0]?.["input_values"]).toMatchObject({ type: "float32", dims: [1, 3] });
    expect(numbersIn(seen.encoder[0]?.["input_values"])).toEqual([0.5, -0.25, 0.125]);
  });

  it("[V55] loading twice is loading once, and both networks are given back", async () => {
    const { runtime, seen } = fakeRuntime();
    let loads = 0;
    const transcriber = createOnnxTranscriber(() => {
      loads++;
      return Promise.resolve({ runtime, encoder, decoder, tokens });
    });
    await transcriber.load();
    await transcriber.load();
    expect(loads).toBe(1);
    expect(transcriber.tokens()).toBe(tokens);
    await transcriber.free();
    expect(seen.released).toBe(2);
    await expect(transcriber.takeIn(new Float32Array(3))).rejects.toThrow("before it was loaded");
  });

  it("[V55] where one network does not load the other is given back", async () => {
    const { runtime, seen } = fakeRuntime(["input_ids"]);
    const transcriber = createOnnxTranscriber(() => Promise.resolve({ runtime, encoder, decoder, tokens }));
    expect(await transcriber.load()).toMatchObject({ ok: false });
    expect(seen.released).toBe(2);
  });

  it.each<readonly [string, () => Promise<OnnxParts>]>([
    ["the server answered 404", () => Promise.reject(new Error("the server answered 404"))],
    [
      "the decoder has no memory of the kind that is known",
      () => Promise.resolve({ ...fakeRuntime(["input_ids"]), encoder, decoder, tokens }),
    ],
  ])("[V55] a model that does not load (%s) is one sentence, and may be tried again", async (why, broken) => {
    const { runtime } = fakeRuntime();
    const tries = [broken, () => Promise.resolve({ runtime, encoder, decoder, tokens })];
    const transcriber = createOnnxTranscriber(() => tries.shift()?.() ?? broken());
    expect(await transcriber.load()).toEqual({
      ok: false,
      error: `The speech model could not be loaded (${why}). Type or tap instead, or load the page again.`,
    });
    expect(await transcriber.load()).toEqual({ ok: true, value: null });
  });
});
