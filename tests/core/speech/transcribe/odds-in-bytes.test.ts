import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { embeddedTranscribers } from "../../../../core/speech/embedded-assets.ts";
import type { OnnxSession, OnnxTensor } from "../../../../core/speech/onnx.ts";
import { withOddsInBytes } from "../../../../core/speech/transcribe/odds-in-bytes.ts";
import { createSpeller } from "../../../../core/speech/transcribe/speller.ts";
import {
  fieldOf,
  fieldsOf,
  messageOf,
  numberField,
  numbersOf,
  textField,
  textsOf,
} from "../../../../core/speech/transcribe/wire.ts";
import { transcriberFolder, transcriberTokens } from "../../../../server/hear/network-files.ts";
import { onnxRuntime } from "../../../../server/hear/node-onnx.ts";
import { samplesOf } from "../../../bench/voice/conditions.ts";
import { speak } from "../../../voice/synthetic-voices.ts";

const { Tensor, InferenceSession } = onnxRuntime;
const file = (name: string): Uint8Array => readFileSync(join(transcriberFolder("quick"), name));
const said = "Listen kitchen, set a timer for 17 minutes for the pancakes.";

describe("the decoder's odds", () => {
  let sound: OnnxTensor | undefined;
  let text: readonly number[] = [];
  const before = file(embeddedTranscribers.decoder);
  const after = withOddsInBytes(before);

  beforeAll(async () => {
    const encoder = await InferenceSession.create(file(embeddedTranscribers.encoder));
    const [path = ""] = await speak("slt", [
      "listen kitchen, set a timer for seventeen minutes for the pancakes",
    ]);
    const samples = samplesOf(path);
    const answer = await encoder.run({ input_values: new Tensor("float32", samples, [1, samples.length]) });
    sound = answer["last_hidden_state"];
    await encoder.release();
    const tokens = await transcriberTokens();
    text = [tokens.first, ...(createSpeller(tokens).spell(`▁${said.replaceAll(" ", "▁")}`) ?? [])];
  });

  /** ln of the odds of each token after each token of the text: the first together, the last with a memory of them. */
  async function oddsBy(network: Uint8Array): Promise<readonly Float32Array[]> {
    const decoder = await InferenceSession.create(network);
    const first = await run(decoder, text.slice(0, -1), null);
    const second = await run(decoder, text.slice(-1), first);
    await decoder.release();
    return [first, second].flatMap((answer) => {
      const { data, dims } = answer["logits"] ?? { data: null, dims: [] };
      const width = dims[2] ?? 0;
      if (!(data instanceof Float32Array)) throw new Error("no odds");
      return Array.from({ length: data.length / width }, (_, at) =>
        data.subarray(at * width, (at + 1) * width),
      );
    });
  }

  async function run(
    decoder: OnnxSession,
    tokens: readonly number[],
    memory: Record<string, OnnxTensor> | null,
  ) {
    const memories = decoder.inputMetadata.filter(({ name }) => name.startsWith("past_key_values"));
    return decoder.run({
      input_ids: new Tensor("int64", BigInt64Array.from(tokens, BigInt), [1, tokens.length]),
      use_cache_branch: new Tensor("bool", [memory !== null], [1]),
      encoder_hidden_states: sound ?? new Tensor("float32", new Float32Array(), [0]),
      ...Object.fromEntries(
        memories.map(({ name, shape }) => [
          name,
          memory?.[name.replace("past_key_values", "present")] ??
            new Tensor("float32", new Float32Array(), [0, Number(shape?.[1]), 1, Number(shape?.[3])]),
        ]),
      ),
    });
  }

  it("[V70] multiplied in bytes are those of the network as it came, all through a sentence", async () => {
    const [exact, inBytes] = [await oddsBy(before), await oddsBy(after)];
    expect(inBytes.length).toBe(text.length);
    for (const [at, odds] of exact.entries()) {
      const likely = likeliest(odds, 20);
      expect(likeliest(inBytes[at] ?? odds, 1)).toEqual(likely.slice(0, 1));
      for (const token of likely)
        expect(Math.abs(probability(inBytes[at] ?? odds, token) - probability(odds, token))).toBeLessThan(
          0.02,
        );
    }
  });

  it("[V70] are multiplied in bytes in both branches of the network that we ship, and nothing else is changed", () => {
    expect(after).not.toBe(before);
    const operators = (network: Uint8Array) =>
      Buffer.from(network).toString("latin1").split("DynamicQuantizeMatMul").length - 1;
    expect([operators(before), operators(after)]).toEqual([0, 2]);
    // The table once more, its names and two smaller nodes.
    expect(after.length - before.length).toBeLessThan(32_768 * 288 + 1_000);
  });

  it("[V70] a network of another kind is left as it is", () => {
    const encoder = file(embeddedTranscribers.encoder);
    expect(withOddsInBytes(encoder)).toBe(encoder);
    expect(withOddsInBytes(after)).toBe(after);
    const empty = messageOf([numberField(1, 10), fieldOf(7, messageOf([textField(2, "a graph")]))]);
    expect(withOddsInBytes(empty)).toBe(empty);
  });
});

describe("messages on the wire", () => {
  // protobuf.dev/programming-guides/encoding: 150 in field 1, "testing" in field 2, and 3, 270, 86942 packed in field 6.
  const example = Uint8Array.from(
    "08 96 01 12 07 74 65 73 74 69 6e 67 32 06 03 8e 02 9e a7 05"
      .split(" ")
      .map((byte) => Number.parseInt(byte, 16)),
  );

  it("[V70] the examples of the published encoding are read and written", () => {
    const fields = fieldsOf(example);
    expect(numbersOf(fields, 1)).toEqual([150]);
    expect(textsOf(fields, 2)).toEqual(["testing"]);
    expect(numbersOf(fields, 6)).toEqual([3, 270, 86_942]);
    expect(messageOf(fields)).toEqual(example);
    expect(messageOf([numberField(1, 150), textField(2, "testing")])).toEqual(example.slice(0, 12));
  });
});

function likeliest(odds: Float32Array, count: number): readonly number[] {
  return [...odds.keys()].sort((a, b) => (odds[b] ?? 0) - (odds[a] ?? 0)).slice(0, count);
}

function probability(odds: Float32Array, token: number): number {
  const most = odds.reduce((a, b) => Math.max(a, b), -Infinity);
  return Math.exp((odds[token] ?? 0) - most) / odds.reduce((sum, each) => sum + Math.exp(each - most), 0);
}
