import { createEmbeddedEar } from "./core/speech/embedded-ear.ts";
import { createHearing, defaultHearingTimes } from "./core/speech/hearing.ts";
import { defaultEndpointer } from "./core/speech/endpointer.ts";
import { createNodeEngine } from "./server/hear/node-recogniser.ts";
import { createNodeTranscriber } from "./server/hear/node-transcriber.ts";
import { loadNodeVoiceDetector } from "./server/hear/node-voice-detector.ts";
import { allSentences } from "./tests/bench/voice/sentences.ts";
import { allSpeakers } from "./tests/voice/speakers.ts";
import { conditions, heardIn, samplesOf } from "./tests/bench/voice/conditions.ts";
const t: Record<string, [number, number]> = {};
const timed = async <T>(name: string, f: () => Promise<T>): Promise<T> => { const a = performance.now(); const v = await f(); const e = (t[name] ??= [0, 0]); e[0]++; e[1] += performance.now() - a; return v; };
const e0 = createNodeEngine();
const engine = { ...e0, load: e0.load, setGrammar: (w: any) => timed(w.address === null ? "set-few" : "set-all", () => e0.setGrammar(w)), reconsider: (u: any) => timed("reconsider", () => e0.reconsider(u)) } as any;
const t0 = createNodeTranscriber();
const transcriber = { load: t0.load, tokens: t0.tokens, free: t0.free, takeIn: async (s: Float32Array) => { const v = await timed("takeIn", () => t0.takeIn(s)); return { ...v, write: () => { const w = (v as any).write(); return { ...w, __proto__: w, next: w.next, ...Object.fromEntries(Object.entries(w).map(([k, f]) => [k, typeof f === "function" ? (...a: any[]) => { const r = (f as any)(...a); return r instanceof Promise ? timed("step", () => r) : r; } : f])) }; } }; } } as any;
const recogniser = createEmbeddedEar({ transcriber, engine, breathe: () => Promise.resolve() });
await recogniser.load();
const detector = await loadNodeVoiceDetector();
const hearing = createHearing({ recogniser, detector }, { ...defaultHearingTimes, endpointer: defaultEndpointer });
const sentences = await allSentences();
const [every, offset] = [Number(process.argv[3] ?? 6), Number(process.argv[4] ?? 0)];
for (const condition of conditions.filter((c) => process.argv[2]!.split(",").some((x) => c.name.startsWith(x)))) {
  const all: number[] = [];
  for (const [turn, asked] of sentences.entries()) {
    if ((turn + offset) % every !== 0) continue;
    const speaker = allSpeakers[Math.floor(turn / every) % allSpeakers.length]!;
    const [path = ""] = await speaker.speak([`listen kitchen, ${asked.sentence}`]);
    const sound = heardIn(condition, samplesOf(path), turn, []);
    await hearing.listenFor({ grammar: asked.grammar, address: "listen kitchen", mode: "addressed", stopSentences: [] }, "after-utterance");
    await hearing.reset();
    for (const k of Object.keys(t)) t[k] = [0, 0];
    const a = performance.now();
    const ev = [...(await hearing.accept(sound)), ...(await hearing.finish())];
    const ms = performance.now() - a; all.push(ms);
    const v = ev.flatMap((e: any) => e.kind === "heard" ? [e.verdict.kind === "command" ? e.verdict.words.join(" ") + (e.verdict.rivals.length ? " | " + e.verdict.rivals.map((r: any) => r.join(" ")).join(" | ") : "") : e.verdict.kind] : []);
    console.log(condition.name, ms.toFixed(0), Object.entries(t).filter(([, [n]]) => n).map(([k, [n, m]]) => `${k} ${n}x${(m).toFixed(0)}`).join(" "), v.join("; "));
  }
  all.sort((a, b) => a - b);
  console.log("==", condition.name, "p50", all[all.length >> 1], "p95", all[Math.floor(all.length * 0.95)]);
}
recogniser.free(); process.exit(0);
