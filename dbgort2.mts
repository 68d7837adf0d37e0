import { withOddsInBytes } from "./core/speech/transcribe/odds-in-bytes.ts";
import { env, InferenceSession, Tensor } from "onnxruntime-web/wasm";
import { readFileSync } from "node:fs";
env.wasm.numThreads = 1;
const dir = "node_modules/@moonshine-ai/moonshine-js/dist/model/tiny/quantized/";
const T = 150, n = Number(process.argv[2] ?? 1);
const s = await InferenceSession.create(withOddsInBytes(readFileSync(dir + "decoder_model_merged.onnx")), { ...(process.argv[3] ? { extra: { session: { disable_quant_qdq: "1" } } } : {}), ...(process.argv[4] ? {enableProfiling: true, logSeverityLevel: 0} : {}) } as any);
console.log(s.inputMetadata.slice(0, 6), s.outputNames.slice(0, 6));
const feeds: any = { input_ids: new Tensor("int64", BigInt64Array.from([1n]), [1, 1]), use_cache_branch: new Tensor("bool", [false], [1]), encoder_hidden_states: new Tensor("float32", new Float32Array(T * 288).map(() => Math.random()), [1, T, 288]) };
for (const m of s.inputMetadata) if (m.name.startsWith("past")) feeds[m.name] = new Tensor("float32", new Float32Array(0), [0, 8, 1, 36]);
let out: any = await s.run(feeds);
for (let i = 0; i < 40; i++) {
  const f: any = { ...feeds, use_cache_branch: new Tensor("bool", [true], [1]), input_ids: new Tensor("int64", new BigInt64Array(n).fill(300n), [n, 1]) };
  for (const m of s.inputMetadata) if (m.name.startsWith("past")) { const o = out[m.name.replace("past_key_values", "present")]; if (m.name.includes("encoder")) f[m.name] = i === 0 ? o : feeds[m.name]; else { const d = i === 0 && n > 1 ? new Tensor("float32", (() => { const z = new Float32Array(n * o.data.length); for (let k = 0; k < n; k++) z.set(o.data, k * o.data.length); return z; })(), [n, ...o.dims.slice(1)]) : o; f[m.name] = d; } if (m.name.includes("encoder") && i === 0) feeds[m.name] = o; }
  const a = performance.now();
  out = await s.run(f, ["logits", ...s.outputNames.filter((x) => x.includes("decoder"))] as any);
  console.log("step", performance.now() - a);
}
s.endProfiling();
