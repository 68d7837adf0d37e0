import { createNodeTranscriber } from "./server/hear/node-transcriber.ts";
import { onnxRuntime } from "./server/hear/node-onnx.ts";
import { samplesOf } from "./tests/bench/voice/conditions.ts";
import { allSpeakers } from "./tests/voice/speakers.ts";
const [path = ""] = await allSpeakers[1]!.speak(["listen kitchen, set a timer for seventeen minutes for the pancakes"]);
const s = samplesOf(path);
const t = createNodeTranscriber(); await t.load();
console.log("seconds", s.length / 16000);
for (const n of [1, 4, 9, 25]) {
  const sound = await t.takeIn(s);
  const w = sound.write();
  await w.step([0], [1]);
  await w.step(Array(n).fill(0), Array(n).fill(100));
  const a = performance.now();
  for (let i = 0; i < 12; i++) await w.step([...Array(n).keys()], Array(n).fill(200 + i));
  console.log(n, ((performance.now() - a) / 12).toFixed(2), "ms a step");
}
const a = performance.now(); for (let i = 0; i < 5; i++) await t.takeIn(s); console.log("takeIn", (performance.now() - a) / 5);

const sound = await t.takeIn(s); const w = sound.write(); let tok = 1; const out: any[] = []; let sc = 0;
for (let i = 0; i < 40; i++) { const [r] = await w.step([0], [tok]); let b = 0; r!.forEach((v, k) => { if (v > r![b]!) b = k; }); const m = r![b]!; let z = 0; r!.forEach((v) => z += Math.exp(v - m)); sc -= Math.log(z); tok = b; out.push(t.tokens().texts[b]); if (b === 2) break; }
console.log(out.join(""), sc);
process.exit(0);
