import { createNodeRecogniser } from "./server/hear/node-recogniser.ts";
import { createHearing, defaultHearingTimes } from "./core/speech/hearing.ts";
import { defaultEndpointer } from "./core/speech/endpointer.ts";
import { loadNodeVoiceDetector } from "./server/hear/node-voice-detector.ts";
import { allSentences } from "./tests/bench/voice/sentences.ts";
import { allSpeakers } from "./tests/voice/speakers.ts";
import { conditions, heardIn, samplesOf } from "./tests/bench/voice/conditions.ts";
import { judgeHeard } from "./tests/voice/judge-heard.ts";
const recogniser = createNodeRecogniser(); await recogniser.load();
const detector = await loadNodeVoiceDetector();
const hearing = createHearing({ recogniser, detector }, { ...defaultHearingTimes, endpointer: defaultEndpointer });
const sentences = await allSentences();
const [every, offset] = [Number(process.argv[3] ?? 6), Number(process.argv[4] ?? 0)];
for (const condition of conditions.filter((c) => process.argv[2]!.split(",").some((x) => c.name.startsWith(x)))) {
  for (const [turn, asked] of sentences.entries()) {
    if ((turn + offset) % every !== 0) continue;
    const speaker = allSpeakers[Math.floor(turn / every) % allSpeakers.length]!;
    const [path = ""] = await speaker.speak([`listen kitchen, ${asked.sentence}`]);
    const sound = heardIn(condition, samplesOf(path), turn, []);
    await hearing.listenFor({ grammar: asked.grammar, address: "listen kitchen", mode: "addressed", stopSentences: [] }, "after-utterance");
    await hearing.reset();
    const show = (o: any) => o.kind === "clear" ? `clear ${o.fit.toFixed(1)} ${ok(o.words)}` : o.kind === "torn" ? `torn ${o.fit.toFixed(1)} ${o.between.map((b: any) => ok(b.words) + (b.score - o.between[0].score).toFixed(1)).join("/")}` : "other";
    const ok = (w: string[]) => judgeHeard(asked.sentence, w.slice(2).join(" "), asked.kitchen) === "right" ? "RIGHT" : w.slice(2).join(" ");
    const lines: string[] = [];
    (globalThis as any).dbg = (a: any, b: any, sure: boolean) => { if (!sure) lines.push(`   ${show(a)} => ${show(b)}`); else lines.push(`   SURE ${show(a)}`); };
    const ev = [...(await hearing.accept(sound)), ...(await hearing.finish())];
    const v: any = ev.flatMap((e: any) => e.kind === "heard" ? [e.verdict] : []).find((v: any) => v.kind === "command");
    const res = !v ? "SILENT" : judgeHeard(asked.sentence, v.words.join(" "), asked.kitchen) === "right" ? (v.rivals.length ? "RIGHT+rivals" : "RIGHT") : v.rivals.length ? "other+rivals" : "WRONG";
    console.log(`${condition.name} | ${asked.sentence} | ${res} ${v ? v.words.join(" ") : ""}`);
    console.log(lines.at(-1) ?? "   none");
  }
}
process.exit(0);
