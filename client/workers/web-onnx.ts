import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { oneAtATime, type OnnxRuntime } from "../../core/speech/onnx.ts";

// More threads would need a page that is isolated from all others, and gain little for so small networks.
env.wasm.numThreads = 1;

/** The runtime of networks for a worker. Its own types name more kinds of tensors than our networks use. */
export const onnxRuntime = oneAtATime({ InferenceSession, Tensor } as unknown as OnnxRuntime);
