import { listeningRate } from "./samples.ts";
import type { OnnxRuntime, OnnxTensor } from "./onnx.ts";

/** Tells a human voice from every other sound, frame by frame, in one stream at a time. */
export type VoiceDetector = {
  /** Takes the next frame, 16 kHz. @returns how likely its end is a voice, 0 to 1 */
  readonly hear: (frame: Float32Array) => Promise<number>;
  /** Another stream begins. */
  readonly forget: () => void;
  /** Gives the network back; nothing may be called afterwards. */
  readonly free: () => Promise<void>;
};

/** The runtime, and the network's file. */
export type VoiceDetectorParts = { readonly runtime: OnnxRuntime; readonly network: Uint8Array };

/**
 * Loads the detector of the package `@ricky0123/vad-web`: a network that takes 32 ms at a time, with 4 ms of what came
 * before, and remembers the rest in its state.
 * @returns null where it cannot be loaded: the loudness alone must do then
 */
export async function loadVoiceDetector(
  loadParts: () => Promise<VoiceDetectorParts>,
): Promise<VoiceDetector | null> {
  try {
    return await detector(await loadParts());
  } catch {
    return null;
  }
}

const samplesALook = 512;
const samplesBefore = 64;
const stateShape: readonly number[] = [2, 1, 128];

async function detector({ runtime, network }: VoiceDetectorParts): Promise<VoiceDetector> {
  const session = await runtime.InferenceSession.create(network);
  const rate = new runtime.Tensor("int64", BigInt64Array.of(BigInt(listeningRate)), []);
  const blank = (): OnnxTensor =>
    new runtime.Tensor("float32", new Float32Array(stateShape.reduce((all, each) => all * each)), stateShape);
  const sound = new Float32Array(samplesBefore + samplesALook);
  let filled = samplesBefore;
  let state = blank();
  let voice = 0;

  const look = async (): Promise<void> => {
    const input = new runtime.Tensor("float32", sound.slice(), [1, sound.length]);
    const { output, stateN } = await session.run({ input, state, sr: rate });
    if (!(output?.data instanceof Float32Array) || stateN === undefined)
      throw new Error("the voice detector answered in an unknown way");
    [voice = 0] = output.data;
    state = stateN;
    sound.copyWithin(0, samplesALook);
    filled = samplesBefore;
  };

  return {
    hear: async (frame) => {
      for (let at = 0; at < frame.length;) {
        const taken = frame.subarray(at, at + sound.length - filled);
        sound.set(taken, filled);
        filled += taken.length;
        at += taken.length;
        if (filled === sound.length) await look();
      }
      return voice;
    },
    forget: () => {
      sound.fill(0);
      filled = samplesBefore;
      state = blank();
      voice = 0;
    },
    free: () => session.release(),
  };
}
