import { createNodeTranscriber } from "./server/hear/node-transcriber.ts";
import { allSentences } from "./tests/bench/voice/sentences.ts";
import { allSpeakers } from "./tests/voice/speakers.ts";
import { conditions, heardIn, samplesOf } from "./tests/bench/voice/conditions.ts";
import { judgeHeard } from "./tests/voice/judge-heard.ts";
import { search, quickSearch, patientSearch } from "./core/speech/transcribe/search.ts";
import { opinionOf } from "./core/speech/transcribe/opinion.ts";
import { createSpeller } from "./core/speech/transcribe/speller.ts";
import { WordPaths } from "./core/speech/transcribe/word-paths.ts";
import { toAutomaton } from "./core/speech/automaton.ts";
import { expectation } from "./core/speech/expectation.ts";
import { filled } from "./core/speech/transcribe/filled.ts";
const t = createNodeTranscriber(); await t.load();
const speller = createSpeller(t.tokens());
const sentences = await allSentences();
const every = 6, offset = Number(process.argv[3] ?? 1);
const variants: Record<string, any> = { base: quickSearch, w8: { ...quickSearch, width: 8 }, w6: { ...quickSearch, width: 6 }, w8d6: { ...quickSearch, width: 8, drafts: 6 }, w8f16: { ...quickSearch, width: 8, widthBelowFree: 16 } };
const tot: any = {};
for (const c of conditions.filter((c) => process.argv[2]!.split(",").some((x) => c.name.startsWith(x)))) for (const [turn, asked] of sentences.entries()) {
  if ((turn + offset) % every !== 0) continue;
  const speaker = allSpeakers[Math.floor(turn / every) % allSpeakers.length]!;
  const [path = ""] = await speaker.speak([`listen kitchen, ${asked.sentence}`]);
  const all = heardIn(c, samplesOf(path), turn, []);
  const sound = all.subarray(1.2 * 16000, all.length - 1.44 * 16000);
  const what = { grammar: asked.grammar, address: "listen kitchen", mode: "addressed", stopSentences: [] } as const;
  const a = toAutomaton(what); if (!a.ok) throw 0;
  const paths = new WordPaths(a.value, speller); const expected = expectation(what);
  const s = await t.takeIn(sound);
  for (const [name, v] of Object.entries(variants)) {
    let steps = 0, rows = 0;
    const w = s.write(); const writing = { step: (p: any, k: any) => { steps++; rows += k.length; return w.step(p, k); } };
    const t0 = performance.now();
    const f = await search(writing, paths, t.tokens(), { ...v, speechS: filled(sound).spokenS, address: expected.address, isAddressed: true, isGivenUp: async () => false });
    const o: any = opinionOf(f, expected);
    const best = o.kind === "clear" ? o.words : o.kind === "torn" ? o.between[0].words : null;
    const r = best === null ? "none" : judgeHeard(asked.sentence, best.slice(2).join(" "), asked.kitchen) === "right" ? "right" : "wrong";
    const e = (tot[c.name + "|" + name] ??= { n: 0, steps: 0, rows: 0, ms: 0, right: 0, wrong: 0, none: 0, torn: 0 });
    e.n++; e.steps += steps; e.rows += rows; e.ms += performance.now() - t0; e[r]++; if (o.kind === "torn") e.torn++;
  }
}
for (const [k, e] of Object.entries<any>(tot)) console.log(k.padEnd(30), "steps", (e.steps / e.n).toFixed(1), "rows/step", (e.rows / e.steps).toFixed(1), "ms", (e.ms / e.n).toFixed(0), `right ${e.right} wrong ${e.wrong} none ${e.none} torn ${e.torn}`);
process.exit(0);
