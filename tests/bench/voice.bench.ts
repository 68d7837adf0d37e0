/**
 * How much of what is said to a real evening is heard right, by voice and by what is said; how much other speech
 * passes for a command; and how quick a grammar is made. The phrasebook's own grammar, the recogniser as it ships.
 * Run: npx tsx tests/bench/voice.bench.ts [--mode addressed|open] [--voices rms,slt] [--turns 4] [--every 10]
 *   --turns N  each voice says every Nth sentence, the next voice the next ones; 1 for all by all
 *   --every N  every Nth recording of other speech; 0 for none
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { toAutomaton } from "../../core/speech/automaton.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Kitchen } from "../../core/talk/model.ts";
import { understand } from "../../core/talk/understand.ts";
import { createFileHearer } from "../../server/hear/hear-file.ts";
import { createNodeRecogniser } from "../../server/hear/node-recogniser.ts";
import { eveningMoments } from "../voice/evening-moments.ts";
import { eveningSentences } from "../voice/evening-sentences.ts";
import { isInGrammar, judgeHeard, type Outcome, spokenIntents } from "../voice/judge-heard.ts";
import { asWav, speechThatIsNoCommand } from "../voice/speech-that-is-no-command.ts";
import { allSpeakers, soundMs, type Speaker } from "../voice/speakers.ts";
import { median, percent, print, printFigure, printMachine, quantile, timed } from "./figures.ts";

const { values } = parseArgs({
  options: {
    voices: { type: "string" },
    mode: { type: "string", default: "addressed" },
    every: { type: "string", default: "10" },
    turns: { type: "string", default: "4" },
  },
});
const mode = values.mode === "open" ? "open" : "addressed";
const address = "okay kitchen";
const speakers = allSpeakers.filter(({ name }) => values.voices?.split(",").includes(name) ?? true);

/** One sentence, the moment it is said at, and what is listened for then. */
type Asked = {
  readonly group: string;
  readonly sentence: string;
  readonly kitchen: Kitchen;
  readonly grammar: Grammar;
};

const moments = await eveningMoments();
const grammars = new Map(Object.entries(moments).map(([name, kitchen]) => [name, grammarFor(kitchen)]));

function grammarAt(moment: string): Grammar {
  const grammar = grammars.get(moment);
  if (grammar === undefined) throw new Error(`the evening has no moment "${moment}"`);
  return grammar;
}

const all: readonly Asked[] = eveningSentences.flatMap(({ name, moment, sentences }) =>
  sentences.map((sentence) => ({
    group: name,
    sentence,
    kitchen: moments[moment],
    grammar: grammarAt(moment),
  })),
);

/** A sentence that cannot be heard, or an intent without a sentence, would make the figures worthless. */
function checkSentences(): void {
  const faults = all.flatMap(({ sentence, kitchen, grammar }) => {
    if (!isInGrammar(sentence, grammar)) return [`"${sentence}" is not in the grammar of its moment`];
    return understand(sentence, kitchen).intent === null ? [`"${sentence}" is not understood`] : [];
  });
  const wanted = new Set(all.map(({ sentence, kitchen }) => understand(sentence, kitchen).intent?.type));
  const missing = [...spokenIntents].filter((intent) => !wanted.has(intent));
  if (missing.length > 0) faults.push(`no sentence wants ${missing.join(", ")}`);
  if (faults.length > 0) throw new Error(`tests/voice/evening-sentences.ts: ${faults.join("; ")}`);
}

checkSentences();
/** Each voice says one sentence of so many, and the next voice the next ones: all are said, and it takes minutes. */
const turns = Number(values.turns);

/** What became of one sentence by one voice. */
type Trial = Asked & {
  readonly speaker: Speaker;
  readonly outcome: Outcome;
  readonly heard: string | null;
  readonly confidence: number | null;
  readonly why: string;
  /** Processor time, and the length of the sound with the quiet after it. */
  readonly cpuMs: number;
  readonly soundMs: number;
};

const hearer = createFileHearer();

async function hearSpeaker(speaker: Speaker, turn: number): Promise<readonly Trial[]> {
  const asked = all.filter((_, at) => at % turns === turn);
  const said = asked.map(({ sentence }) => (mode === "addressed" ? `${address}, ${sentence}` : sentence));
  const paths = await speaker.speak(said);
  const trials: Trial[] = [];
  for (const [at, one] of asked.entries()) {
    const path = paths[at] ?? "";
    const { ms, value } = await timed(() => hearer.hearFile(path, { grammar: one.grammar, address, mode }));
    if (!value.ok) throw new Error(value.error);
    const { heard, confidence, segments } = value.value;
    trials.push({
      ...one,
      speaker,
      heard,
      confidence,
      outcome: judgeHeard(one.sentence, heard, one.kitchen),
      why: segments.map(({ verdict }) => (verdict.kind === "none" ? verdict.why : verdict.kind)).join(", "),
      cpuMs: ms,
      soundMs: soundMs(path) + 1000,
    });
  }
  return trials;
}

const count = (trials: readonly Trial[], outcome: Outcome): number =>
  trials.filter((trial) => trial.outcome === outcome).length;

const row = (name: string, trials: readonly Trial[]): string =>
  `  ${name.padEnd(14)} ${[
    `${String(count(trials, "right")).padStart(4)} of ${String(trials.length).padEnd(4)} right`,
    `${String(count(trials, "silent")).padStart(3)} silent`,
    `${String(count(trials, "wrong")).padStart(3)} wrong`,
    percent(count(trials, "right"), trials.length).padStart(7),
  ].join("  ")}`;

async function listenToSentences(): Promise<void> {
  print(
    `${mode}: ${all.length} sentences of the welcome supper; ${speakers.length} voices, each says one of ${turns}.`,
  );
  const trials: Trial[] = [];
  for (const [at, speaker] of speakers.entries()) {
    const ofVoice = await hearSpeaker(speaker, at % turns);
    trials.push(...ofVoice);
    print(row(speaker.name, ofVoice));
    printMishaps(ofVoice);
  }
  for (const group of new Set(all.map((one) => one.group))) {
    const ofGroup = trials.filter((trial) => trial.group === group);
    if (ofGroup.length > 0) print(row(group, ofGroup));
  }
  const isStranger = ({ speaker }: Trial): boolean => speaker.tunedOn === "no";
  printHearing(
    "voices that the limits were set with",
    trials.filter((trial) => !isStranger(trial)),
  );
  printHearing("voices that nothing was tuned on", trials.filter(isStranger));
  printWork(trials);
}

function printMishaps(trials: readonly Trial[]): void {
  for (const { sentence, heard, confidence, outcome } of trials) {
    if (outcome === "wrong")
      print(`      wrong: "${sentence}" -> "${heard}" (confidence ${confidence?.toFixed(3)})`);
  }
  const silent = trials.filter(({ outcome }) => outcome === "silent");
  for (const { sentence, why } of silent) print(`      silent: "${sentence}" (${why})`);
}

function printHearing(whose: string, trials: readonly Trial[]): void {
  if (trials.length === 0) return;
  const right = count(trials, "right");
  const wrong = count(trials, "wrong");
  const exact = trials.filter(({ sentence, heard }) => sentence === heard).length;
  const confidences = trials.flatMap((t) =>
    t.outcome === "right" && t.confidence !== null ? [t.confidence] : [],
  );
  const lowest = confidences.toSorted((a, b) => a - b).slice(0, 5);
  print(`${whose}: ${trials.length} sentences, ${mode}, quiet`);
  printFigure("  right", percent(right, trials.length), ">= 97 %", right / trials.length >= 0.97);
  printFigure("  wrong action", percent(wrong, trials.length), "<= 1 %", wrong / trials.length <= 0.01);
  print(`  every word as it was said: ${percent(exact, trials.length)}`);
  print(`  lowest confidences of those right: ${lowest.map((each) => each.toFixed(3)).join(" ")}`);
}

function printWork(trials: readonly Trial[]): void {
  const cpu = trials.map(({ cpuMs }) => cpuMs);
  const factor = cpu.reduce((a, b) => a + b, 0) / trials.reduce((sum, { soundMs }) => sum + soundMs, 0);
  print(
    `processor time a sentence: p50 ${median(cpu).toFixed(0)}, p95 ${quantile(cpu, 0.95).toFixed(0)} ms; real-time factor ${factor.toFixed(2)}`,
  );
}

/** Makes and sets the grammar of every moment a few times over, as an evening does. */
async function measureGrammars(): Promise<void> {
  const recogniser = createNodeRecogniser();
  const loaded = await recogniser.load();
  if (!loaded.ok) throw new Error(loaded.error);
  const runs: {
    readonly built: number;
    readonly woven: number;
    readonly set: number;
    readonly states: number;
  }[] = [];
  for (const kitchen of Array.from({ length: 4 }, () => Object.values(moments)).flat()) {
    const built = await timed(() => grammarFor(kitchen));
    const what = { grammar: built.value, address, mode, stopSentences: [] } as const;
    const woven = await timed(() => toAutomaton(what));
    if (!woven.value.ok) throw new Error(woven.value.error);
    const set = await timed(() => recogniser.setGrammar(what));
    if (!set.value.ok) throw new Error(set.value.error);
    runs.push({ built: built.ms, woven: woven.ms, set: set.ms, states: woven.value.value.states.length });
  }
  recogniser.free();
  const of = (part: "built" | "woven" | "set"): string => median(runs.map((run) => run[part])).toFixed(0);
  const whole = runs.map(({ built, woven, set }) => built + woven + set);
  print(`grammar of a moment: ${runs[0]?.states} states; processor time, median of ${runs.length}:`);
  print(
    `  from the phrasebook ${of("built")} ms, automaton ${of("woven")} ms, into the engine ${of("set")} ms`,
  );
  printFigure(
    "grammar made and set",
    `${median(whole).toFixed(0)} ms, first ${whole[0]?.toFixed(0)} ms`,
    "100 ms",
    median(whole) <= 100,
  );
}

async function listenToOthers(every: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "stovecall-voice-"));
  const others = speechThatIsNoCommand().filter((_, at) => at % every === 0);
  let acted = 0;
  let minutes = 0;
  for (const path of others) {
    const copy = join(folder, "speech.wav");
    const bytes = asWav(path);
    writeFileSync(copy, bytes);
    const result = await hearer.hearFile(copy, { grammar: grammarAt("busy"), address, mode });
    if (!result.ok) {
      print(`  ${path}: ${result.error}`);
      continue;
    }
    minutes += bytes.length / (path.includes("asterisk") ? 16_000 : 32_000) / 60;
    if (result.value.heard === null) continue;
    acted++;
    print(`  acted on ${path}: "${result.value.heard}" (confidence ${result.value.confidence?.toFixed(3)})`);
  }
  rmSync(folder, { recursive: true, force: true });
  const measured = `${acted} in ${minutes.toFixed(1)} min`;
  const toReach = mode === "addressed" ? "0 in 10 h" : "1 in 10 h";
  const what = `commands heard in other speech, ${mode}`;
  if (acted > 0) printFigure(what, measured, toReach, false);
  else print(`${what.padEnd(46)} ${measured.padEnd(24)} (to reach: ${toReach})  none in so short a time`);
}

printMachine();
await measureGrammars();
await listenToSentences();
if (Number(values.every) > 0) await listenToOthers(Number(values.every));
hearer.close();
