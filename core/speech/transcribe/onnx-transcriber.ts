import { err, ok, type Result } from "../../units/result.ts";
import { listeningRate } from "../samples.ts";
import type { OnnxRuntime, OnnxSession, OnnxTensor } from "../onnx.ts";
import { withOddsInBytes } from "./odds-in-bytes.ts";
import type { TakenIn, Tokens, Transcriber, Writing } from "./transcriber.ts";

/** What the shell gives: the runtime, the two halves of the model, and the tokens it writes in. */
export type OnnxParts = {
  readonly runtime: OnnxRuntime;
  readonly encoder: Uint8Array;
  readonly decoder: Uint8Array;
  readonly tokens: Tokens;
};

/**
 * A transcriber of two ONNX networks: an encoder that takes the samples whole, and a decoder with a memory
 * ("key" and "value" tensors of the layers before) that adds a token at a time to a batch of drafts.
 * @param loadParts reads runtime, model and tokens; Node and the browser do it differently
 */
export function createOnnxTranscriber(loadParts: () => Promise<OnnxParts>): Transcriber {
  return new OnnxTranscriber(loadParts);
}

type Loaded = {
  readonly runtime: OnnxRuntime;
  readonly tokens: Tokens;
  readonly encoder: OnnxSession;
  readonly decoder: OnnxSession;
  /** Heads and width of the memory, by its tensor's name. */
  readonly memory: ReadonlyMap<string, readonly [heads: number, width: number]>;
};

/** About as much as a sentence takes. */
const [warmUpDrafts, warmUpSteps] = [8, 10];

class OnnxTranscriber implements Transcriber {
  private readonly loadParts: () => Promise<OnnxParts>;
  private loaded: Loaded | null = null;

  constructor(loadParts: () => Promise<OnnxParts>) {
    this.loadParts = loadParts;
  }

  readonly tokens = (): Tokens => this.model().tokens;

  readonly load = async (): Promise<Result<null, string>> => {
    if (this.loaded !== null) return ok(null);
    const open: OnnxSession[] = [];
    try {
      const { runtime, tokens, encoder, decoder } = await this.loadParts();
      const read = await runtime.InferenceSession.create(encoder);
      open.push(read);
      const write = await runtime.InferenceSession.create(withOddsInBytes(decoder));
      open.push(write);
      this.loaded = { runtime, tokens, encoder: read, decoder: write, memory: memoryOf(write) };
      return ok(null);
    } catch (thrown) {
      for (const session of open) await session.release();
      const detail = thrown instanceof Error ? thrown.message : String(thrown);
      return err(
        `The speech model could not be loaded (${detail}). Type or tap instead, or load the page again.`,
      );
    }
  };

  readonly takeIn = async (utterance: Float32Array): Promise<TakenIn> => {
    const loaded = this.model();
    const { runtime, encoder } = loaded;
    const input = new runtime.Tensor("float32", utterance, [1, utterance.length]);
    const { last_hidden_state: sound } = await encoder.run({ input_values: input });
    if (sound === undefined) throw new Error("the encoder answered without hidden states");
    return { write: () => new OnnxWriting(loaded, sound) };
  };

  readonly warmUp = async (): Promise<void> => {
    const sound = await this.takeIn(new Float32Array(2 * listeningRate));
    const writing = sound.write();
    await writing.step([0], [this.tokens().first]);
    const drafts = Array.from({ length: warmUpDrafts }, () => 0);
    for (let at = 0; at < warmUpSteps; at++) await writing.step(drafts, drafts);
  };

  readonly free = async (): Promise<void> => {
    await this.loaded?.encoder.release();
    await this.loaded?.decoder.release();
    this.loaded = null;
  };

  private model(): Loaded {
    if (this.loaded === null) throw new Error("the transcriber was used before it was loaded");
    return this.loaded;
  }
}

const memoryName = /^past_key_values\.\d+\.(encoder|decoder)\.(key|value)$/;

function memoryOf({ inputMetadata }: OnnxSession): Loaded["memory"] {
  const found = inputMetadata.flatMap(({ name, shape }) =>
    memoryName.test(name) ? [[name, [Number(shape?.[1]), Number(shape?.[3])]] as const] : [],
  );
  if (found.length === 0) throw new Error("the decoder has no memory of the kind that is known");
  return new Map(found);
}

type Memory = Readonly<Record<string, OnnxTensor>>;

/** Memory of the sound is the same for every draft; memory of the text belongs to each. */
class OnnxWriting implements Writing {
  private readonly loaded: Loaded;
  private sound: Memory;
  private text: Memory | null = null;

  constructor(loaded: Loaded, hiddenStates: OnnxTensor) {
    this.loaded = loaded;
    this.sound = { encoder_hidden_states: hiddenStates };
  }

  readonly step: Writing["step"] = async (parents, tokens) => {
    const { runtime, decoder } = this.loaded;
    const { text } = this;
    const answer = await decoder.run({
      input_ids: new runtime.Tensor("int64", BigInt64Array.from(tokens, BigInt), [tokens.length, 1]),
      use_cache_branch: new runtime.Tensor("bool", [text !== null], [1]),
      ...(text === null ? this.emptyMemory() : mapTensors(text, (each) => rowsOf(runtime, each, parents))),
      // One sound for all drafts: the network spreads a batch of one over the others by itself.
      ...this.sound,
    });
    if (text === null) this.sound = { ...this.sound, ...this.answered(answer, "encoder") };
    this.text = this.answered(answer, "decoder");
    const { logits } = answer;
    if (!(logits?.data instanceof Float32Array)) throw new Error("the decoder answered without odds");
    const [, , width = 0] = logits.dims;
    const odds = logits.data;
    return tokens.map((_, row) => odds.subarray(row * width, (row + 1) * width));
  };

  private emptyMemory(): Memory {
    const { runtime, memory } = this.loaded;
    return Object.fromEntries(
      [...memory].map(([name, [heads, width]]) => [
        name,
        new runtime.Tensor("float32", new Float32Array(0), [0, heads, 1, width]),
      ]),
    );
  }

  private answered(answer: Memory, half: "encoder" | "decoder"): Memory {
    const names = [...this.loaded.memory.keys()].filter((name) => name.includes(`.${half}.`));
    return Object.fromEntries(
      names.map((name) => {
        const tensor = answer[name.replace("past_key_values", "present")];
        if (tensor === undefined) throw new Error(`the decoder did not answer ${name}`);
        return [name, tensor];
      }),
    );
  }
}

function mapTensors(tensors: Memory, change: (tensor: OnnxTensor) => OnnxTensor): Memory {
  return Object.fromEntries(Object.entries(tensors).map(([name, tensor]) => [name, change(tensor)]));
}

/** A tensor of these rows of another, in this order. */
function rowsOf(runtime: OnnxRuntime, tensor: OnnxTensor, rows: readonly number[]): OnnxTensor {
  const { data, dims } = tensor;
  if (!(data instanceof Float32Array))
    throw new Error("a tensor of another kind than numbers was to be copied");
  const [count = 1, ...rest] = dims;
  const size = data.length / count;
  const chosen = new Float32Array(rows.length * size);
  rows.forEach((row, at) => chosen.set(data.subarray(row * size, (row + 1) * size), at * size));
  return new runtime.Tensor("float32", chosen, [rows.length, ...rest]);
}
