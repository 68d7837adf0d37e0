import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { oneAtATime, type OnnxRuntime } from "../../core/speech/onnx.ts";

/** More than this many threads gain nothing for networks so small. */
const mostThreads = 4;

// Threads share memory, which a browser allows only to a page that is isolated from all others.
env.wasm.numThreads = crossOriginIsolated ? Math.min(mostThreads, navigator.hardwareConcurrency) : 1;

/** The runtime of networks for a worker. Its own types name more kinds of tensors than our networks use. */
export const onnxRuntime = oneAtATime({ InferenceSession, Tensor } as unknown as OnnxRuntime);
