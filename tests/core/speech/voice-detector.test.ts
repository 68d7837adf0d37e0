import { describe, expect, it } from "vitest";
import {
  oneAtATime,
  type OnnxRuntime,
  type OnnxSession,
  type OnnxTensor,
} from "../../../core/speech/onnx.ts";
import { loadVoiceDetector } from "../../../core/speech/voice-detector.ts";
import { FakeTensor, type Feeds, numbersIn } from "../../voice/fake-onnx.ts";

type Answer = Record<string, OnnxTensor>;

/** A runtime whose one network is a function. */
function runtimeOf(run: (feeds: Feeds) => Answer | Promise<Answer>): OnnxRuntime {
  const create = (): Promise<OnnxSession> =>
    Promise.resolve({
      inputMetadata: [],
      run: async (feeds: Feeds) => run(feeds),
      release: () => Promise.resolve(),
    });
  return { Tensor: FakeTensor, InferenceSession: { create } };
}

const network = Uint8Array.of(1);
const many = (count: number, value: number): readonly number[] => Array.from({ length: count }, () => value);

describe("the voice detector", () => {
  it("[V66] looks at 32 ms at a time, with 4 ms of what came before and its own state, until another stream begins", async () => {
    const looks: { readonly sound: readonly number[]; readonly state: number; readonly rate: number }[] = [];
    // It answers the mean of what it hears, and counts its looks in its state.
    const counting = runtimeOf(({ input, state, sr }) => {
      const sound = numbersIn(input);
      const [before = NaN] = numbersIn(state);
      looks.push({ sound, state: before, rate: numbersIn(sr)[0] ?? NaN });
      const mean = sound.reduce((a, b) => a + b, 0) / sound.length;
      return {
        output: new FakeTensor("float32", Float32Array.of(mean), [1, 1]),
        stateN: new FakeTensor("float32", new Float32Array(256).fill(before + 1), [2, 1, 128]),
      };
    });
    const detector = await loadVoiceDetector(() => Promise.resolve({ runtime: counting, network }));
    const frame = (value: number): Float32Array => new Float32Array(320).fill(value);
    expect(await detector?.hear(frame(1))).toBe(0);
    expect(await detector?.hear(frame(1))).toBeCloseTo(512 / 576);
    expect(looks).toEqual([{ sound: [...many(64, 0), ...many(512, 1)], state: 0, rate: 16_000 }]);
    for (let at = 0; at < 3; at++) await detector?.hear(frame(0.5));
    expect(looks).toHaveLength(3);
    expect(looks[1]?.sound.slice(0, 64)).toEqual(many(64, 1));
    expect(looks[2]?.state).toBe(2);
    detector?.forget();
    expect(await detector?.hear(frame(0.25))).toBe(0);
    await detector?.hear(frame(0.25));
    expect(looks[3]?.state).toBe(0);
    expect(looks[3]?.sound.slice(0, 65)).toEqual([...many(64, 0), 0.25]);
  });

  it("[V66] where it cannot be loaded there is none, and the level alone decides", async () => {
    expect(await loadVoiceDetector(() => Promise.reject(new Error("404")))).toBeNull();
  });

  it("[V66] a network that answers otherwise is a fault, not silence", async () => {
    const detector = await loadVoiceDetector(() =>
      Promise.resolve({ runtime: runtimeOf(() => ({})), network }),
    );
    await expect(detector?.hear(new Float32Array(512))).rejects.toThrow("unknown way");
  });
});

describe("one runtime for several networks", () => {
  it("[V66] never has two calls under way at once, and a failed one holds up none", async () => {
    let underWay = 0;
    let most = 0;
    const done: string[] = [];
    const runtime = oneAtATime(
      runtimeOf(async ({ name }) => {
        most = Math.max(most, ++underWay);
        await new Promise((resolve) => setTimeout(resolve, 1));
        underWay--;
        if (name?.data === "bad") throw new Error("broken");
        done.push(String(name?.data));
        return {};
      }),
    );
    const one = await runtime.InferenceSession.create(network);
    const two = await runtime.InferenceSession.create(network);
    const call = (session: OnnxSession, name: string): Promise<Answer> =>
      session.run({ name: new FakeTensor("string", name, []) });
    const calls = [call(one, "a"), call(two, "bad"), call(two, "b"), call(one, "c")];
    const outcomes = await Promise.allSettled(calls);
    expect(outcomes.map(({ status }) => status)).toEqual(["fulfilled", "rejected", "fulfilled", "fulfilled"]);
    expect(done).toEqual(["a", "b", "c"]);
    expect(most).toBe(1);
  });
});
