/**
 * How much of what is said in a kitchen is heard right, and how much other talk is obeyed: sentences for all intents at
 * moments of three meals, by twelve voices, in the quiet, in rooms and under noises; for each ear that is at hand.
 * "beside" is an answer or a question beside the point, which does nothing; "wrong" is an order that was not given.
 * Run: npm run bench:voice -- [--ears two,light] [--every 6] [--offset 0] [--conditions "quiet,running tap 10"]
 *   [--other 1800] [--modes addressed,open] [--seed 7] [--write]
 *   --every N      one sentence of N in each condition, by the voices in turn; 1 for all of them
 *   --conditions   those whose name begins so
 *   --other S      seconds of other talk, in each of the modes; 36000 for ten hours
 *   --write        keeps figures and picture in docs/figures, beside those that were not measured now
 */
import { join } from "node:path";
import { parseArgs } from "node:util";
import { allSpeakers } from "../voice/speakers.ts";
import { percent, print, printFigure, printMachine } from "./figures.ts";
import { conditions } from "./voice/conditions.ts";
import { openEar } from "./voice/ears.ts";
import { figuresOf, type HeardFigures, type OverheardFigures } from "./voice/heard-figures.ts";
import { keepFigures } from "./voice/keep-figures.ts";
import { letOverhear, outcomes, sayTo, type Trial, type TrialOutcome } from "./voice/listen.ts";
import { allSentences } from "./voice/sentences.ts";

const { values } = parseArgs({
  options: {
    ears: { type: "string", default: "two,light" },
    every: { type: "string", default: "6" },
    offset: { type: "string", default: "0" },
    conditions: { type: "string", default: "" },
    voices: { type: "string", default: "" },
    other: { type: "string", default: "600" },
    modes: { type: "string", default: "addressed,open" },
    seed: { type: "string", default: "7" },
    write: { type: "boolean", default: false },
  },
});
const listed = (text: string): readonly string[] => text.split(",").filter((part) => part !== "");
const begins = (name: string, starts: string): boolean =>
  starts === "" || listed(starts).some((start) => name.startsWith(start));

/** Marks to reach: least share right and most share wrong, by the beginning of a condition's name. */
const marks: readonly (readonly [condition: string, right: number | null, wrong: number])[] = [
  ["quiet", 0.97, 0.01],
  ["extractor fan 10", 0.95, 0.02],
  ["running tap 20", 0.95, 0.02],
  ["running tap 10", 0.8, 0.02],
  ["clatter 10", 0.75, 0.02],
  ["frying 20", 0.8, 0.02],
  ["", null, 0.02],
];

function printCondition(figures: HeardFigures, trials: readonly Trial[]): void {
  const { condition, sentences: said } = figures;
  const [, right = null, wrong = 0.02] = marks.find(([start]) => condition.startsWith(start)) ?? [];
  const of = (outcome: TrialOutcome): string => `${outcome} ${percent(figures[outcome], said)}`;
  const isReached = (right === null || figures.right >= right * said) && figures.wrong <= wrong * said;
  printFigure(
    `${condition} (${said})`,
    `${outcomes.map(of).join(", ")}; every word ${percent(figures.exact, said)}`,
    `${right === null ? "" : `right >= ${100 * right} %, `}wrong <= ${100 * wrong} %`,
    isReached,
  );
  for (const { outcome, speaker, sentence, heard } of trials)
    if (outcome === "wrong" || outcome === "beside")
      print(`      ${outcome}: ${speaker}: "${sentence}" -> "${heard}"`);
}

const sentences = await allSentences();
const speakers = allSpeakers.filter(({ name }) => begins(name, values.voices));
const [every, offset] = [Number(values.every), Number(values.offset)];
const [seed, seconds] = [Number(values.seed), Number(values.other)];
const heard: HeardFigures[] = [];
const overheard: OverheardFigures[] = [];
printMachine();
print(`${sentences.length} sentences, ${speakers.length} voices; one sentence of ${every} in each condition`);
for (const name of listed(values.ears)) {
  print(`\near: ${name}`);
  const ear = await openEar(name);
  for (const condition of conditions.filter(({ name: each }) => begins(each, values.conditions))) {
    const trials = await sayTo(name, ear, condition, sentences, { every, offset, speakers });
    const figures = figuresOf(trials);
    heard.push(figures);
    printCondition(figures, trials);
    print(
      `      processor time a sentence: p50 ${figures.p50Ms}, p95 ${figures.p95Ms} ms; real-time factor ${figures.realTimeFactor}`,
    );
  }
  for (const mode of seconds > 0 ? listed(values.modes) : []) {
    const [asked] = sentences;
    if (asked === undefined || (mode !== "addressed" && mode !== "open")) continue;
    const { heardS, cpuMs, obeyed } = await letOverhear(ear, asked, mode, { seed, seconds });
    const hours = heardS / 3600;
    const what = `other talk obeyed, ${mode}`;
    const measured = `${obeyed.length} in ${hours.toFixed(2)} h`;
    const [toReach, allowed] = mode === "addressed" ? ["0 in 10 h", 0] : ["1 in 10 h", 1];
    if (obeyed.length > allowed || hours >= 10)
      printFigure(what, measured, toReach, obeyed.length <= (allowed * hours) / 10);
    else print(`${what.padEnd(46)} ${measured.padEnd(24)} (to reach: ${toReach})  too short to tell`);
    for (const { text, speaker, heard } of obeyed) print(`      obeyed: ${speaker}: "${text}" -> "${heard}"`);
    const memoryMB = Math.round(process.memoryUsage().rss / 1e6);
    const realTimeFactor = Number((cpuMs / 1000 / heardS).toFixed(3));
    print(`      real-time factor ${realTimeFactor}; memory ${memoryMB} MB`);
    overheard.push({ ear: name, mode, seed, hours, obeyed: [...obeyed], realTimeFactor, memoryMB });
  }
  ear.free();
}
if (values.write) keepFigures(join(import.meta.dirname, "..", "..", "docs", "figures"), { heard, overheard });
