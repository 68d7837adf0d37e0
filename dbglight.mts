import { createEmbeddedRecogniser } from "./core/speech/embedded-recogniser.ts";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { judge, embeddedAcceptance } from "./core/speech/acceptance.ts";
import { allSentences } from "./tests/bench/voice/sentences.ts";
import { allSpeakers } from "./tests/voice/speakers.ts";
import { conditions, heardIn, samplesOf } from "./tests/bench/voice/conditions.ts";
import { judgeHeard } from "./tests/voice/judge-heard.ts";
const extra = JSON.parse(process.argv[3] ?? "{}");
const engine = createEmbeddedRecogniser(async () => {
  const folder = dirname(createRequire(import.meta.url).resolve("soundswallower"));
  const m = (await import(pathToFileURL(join(folder, "soundswallower.node.js")).href)) as any;
  const e = await m.default({ modelBase: join(folder, "model/") });
  const D = e.Decoder;
  e.Decoder = class extends D { constructor(c: any) { super({ ...c, ...extra }); } };
  return e;
});
await engine.load();
const sentences = await allSentences();
const [every, offset] = [12, 2];
for (const condition of conditions.filter((c) => process.argv[2]!.split(",").some((x) => c.name.startsWith(x)))) {
  const ms: number[] = []; let right = 0, wrong = 0, n = 0, set = 0;
  for (const [turn, asked] of sentences.entries()) {
    if ((turn + offset) % every !== 0) continue;
    const speaker = allSpeakers[Math.floor(turn / every) % allSpeakers.length]!;
    const [path = ""] = await speaker.speak([`listen kitchen, ${asked.sentence}`]);
    const all = heardIn(condition, samplesOf(path), turn, []);
    const sound = all.subarray(1.2 * 16000, all.length - 1.2 * 16000);
    let a = performance.now();
    await engine.setGrammar({ grammar: asked.grammar, address: "listen kitchen", mode: "addressed", stopSentences: [] });
    set += performance.now() - a; a = performance.now();
    const v = judge(await engine.reconsider(sound), "listen kitchen", "addressed", embeddedAcceptance);
    ms.push(performance.now() - a); n++;
    if (v.kind === "command") if (judgeHeard(asked.sentence, v.words.join(" "), asked.kitchen) === "right") right++; else wrong++;
  }
  ms.sort((a, b) => a - b);
  console.log(JSON.stringify(extra), condition.name, "n", n, "right", right, "wrong", wrong, "ms p50", ms[ms.length >> 1]!.toFixed(0), "max", ms.at(-1)!.toFixed(0), "set", (set / n).toFixed(0));
}
process.exit(0);
