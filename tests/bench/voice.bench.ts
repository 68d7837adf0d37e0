/**
 * How much of what is said in a kitchen is heard right, and how much other talk is obeyed: sentences for all intents at
 * moments of three meals, by twelve voices, in the quiet, in rooms and under noises; for each ear that is at hand.
 * "beside" is an answer or a question beside the point, which does nothing; "wrong" is an order that was not given.
 * Run: npm run bench:voice -- [--ears two,light] [--every 6] [--offset 0] [--conditions "quiet,running tap 10"]
 *   [--other 1800] [--modes addressed,open] [--seed 7] [--write]
 *   --every N      one sentence of N in each condition, by the voices in turn; 1 for all of them
 *   --conditions   those whose name begins so
 *   --other S      seconds of other talk, in each of the modes; 36000 for ten hours
 *   --write        keeps figures and picture in docs/figures
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { allSpeakers } from "../voice/speakers.ts";
import { median, percent, print, printFigure, printMachine, quantile } from "./figures.ts";
import { conditions } from "./voice/conditions.ts";
import { openEar } from "./voice/ears.ts";
import { letOverhear, outcomes, sayTo, type Trial, type TrialOutcome } from "./voice/listen.ts";
import { pictureOf } from "./voice/picture.ts";
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

const share = (trials: readonly Trial[], outcome: TrialOutcome): number =>
  trials.filter((trial) => trial.outcome === outcome).length / trials.length;

function printCondition(name: string, trials: readonly Trial[]): void {
  const [, right = null, wrong = 0.02] = marks.find(([start]) => name.startsWith(start)) ?? [];
  const of = (outcome: TrialOutcome): string => `${outcome} ${(100 * share(trials, outcome)).toFixed(1)} %`;
  const isReached = (right === null || share(trials, "right") >= right) && share(trials, "wrong") <= wrong;
  printFigure(
    `${name} (${trials.length})`,
    outcomes.map(of).join(", "),
    `${right === null ? "" : `right >= ${100 * right} %, `}wrong <= ${100 * wrong} %`,
    isReached,
  );
  for (const { outcome, speaker, sentence, heard } of trials)
    if (outcome === "wrong" || outcome === "beside")
      print(`      ${outcome}: ${speaker}: "${sentence}" -> "${heard}"`);
}

const sentences = await allSentences();
const speakers = allSpeakers.filter(({ name }) => begins(name, values.voices));
const [every, offset, seconds] = [Number(values.every), Number(values.offset), Number(values.other)];
const trials: Trial[] = [];
const overheard: unknown[] = [];
const work: unknown[] = [];
printMachine();
print(`${sentences.length} sentences, ${speakers.length} voices; one sentence of ${every} in each condition`);
for (const name of listed(values.ears)) {
  print(`\near: ${name}`);
  const ear = await openEar(name);
  for (const condition of conditions.filter(({ name: each }) => begins(each, values.conditions))) {
    const own = await sayTo(name, ear, condition, sentences, { every, offset, speakers });
    trials.push(...own);
    printCondition(condition.name, own);
  }
  const own = trials.filter((trial) => trial.ear === name);
  if (own.length > 0) {
    const cpu = own.map(({ cpuMs }) => cpuMs);
    const factor = cpu.reduce((a, b) => a + b, 0) / own.reduce((sum, { soundS }) => sum + 1000 * soundS, 0);
    print(
      `every word as said: ${percent(own.filter(({ isExact }) => isExact).length, own.length)}; processor time a sentence: ` +
        `p50 ${median(cpu).toFixed(0)}, p95 ${quantile(cpu, 0.95).toFixed(0)} ms; real-time factor ${factor.toFixed(2)}`,
    );
    work.push({ ear: name, p50Ms: median(cpu), p95Ms: quantile(cpu, 0.95), realTimeFactor: factor });
  }
  for (const mode of seconds > 0 ? listed(values.modes) : []) {
    const [asked] = sentences;
    if (asked === undefined || (mode !== "addressed" && mode !== "open")) continue;
    const { heardS, cpuMs, obeyed } = await letOverhear(ear, asked, mode, {
      seed: Number(values.seed),
      seconds,
    });
    const hours = heardS / 3600;
    const what = `other talk obeyed, ${mode}`;
    const measured = `${obeyed.length} in ${hours.toFixed(2)} h`;
    const [toReach, allowed] = mode === "addressed" ? ["0 in 10 h", 0] : ["1 in 10 h", 1];
    if (obeyed.length > allowed || hours >= 10)
      printFigure(what, measured, toReach, obeyed.length <= (allowed * hours) / 10);
    else print(`${what.padEnd(46)} ${measured.padEnd(24)} (to reach: ${toReach})  too short to tell`);
    for (const { text, speaker, heard } of obeyed) print(`      obeyed: ${speaker}: "${text}" -> "${heard}"`);
    const memoryMB = process.memoryUsage().rss / 1e6;
    print(`      real-time factor ${(cpuMs / 1000 / heardS).toFixed(3)}; memory ${memoryMB.toFixed(0)} MB`);
    overheard.push({ ear: name, mode, hours, obeyed, realTimeFactor: cpuMs / 1000 / heardS, memoryMB });
  }
  ear.free();
}
if (values.write) {
  const folder = join(import.meta.dirname, "..", "..", "docs", "figures");
  mkdirSync(folder, { recursive: true });
  const summary = [...new Set(trials.map(({ ear, condition }) => `${ear}|${condition}`))].map((key) => {
    const own = trials.filter(({ ear, condition }) => `${ear}|${condition}` === key);
    const [ear, condition] = key.split("|");
    const of = (outcome: TrialOutcome): number => own.filter((trial) => trial.outcome === outcome).length;
    return {
      ear,
      condition,
      sentences: own.length,
      ...Object.fromEntries(outcomes.map((outcome) => [outcome, of(outcome)])),
    };
  });
  writeFileSync(join(folder, "voice.json"), `${JSON.stringify({ summary, work, overheard }, null, 2)}\n`);
  writeFileSync(join(folder, "voice.svg"), pictureOf(trials));
}
