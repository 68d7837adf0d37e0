import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { oneAtATime, type OnnxRuntime } from "../../core/speech/onnx.ts";

env.wasm.numThreads = 1;

/** The runtime of networks for Node. Its own types name more kinds of tensors than our networks use. */
export const onnxRuntime = oneAtATime({ InferenceSession, Tensor } as unknown as OnnxRuntime);
