import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { oneAtATime, type OnnxRuntime } from "../../core/speech/onnx.ts";

/** More than this many threads gain nothing for networks so small. */
export const mostThreads = 4;

/**
 * The runtime of networks for a worker. Its own types name more kinds of tensors than our networks use.
 * @param threads at most; threads share memory, which a browser allows only to a page that is isolated from all others
 */
export function onnxRuntimeOf(threads: number): OnnxRuntime {
  env.wasm.numThreads = crossOriginIsolated ? Math.min(threads, navigator.hardwareConcurrency) : 1;
  return oneAtATime({ InferenceSession, Tensor } as unknown as OnnxRuntime);
}
