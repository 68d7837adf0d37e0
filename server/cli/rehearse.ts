import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { createFileHearer, type FileHearer } from "../hear/hear-file.ts";
import { clockSecond } from "../rehearsal/clock-time.ts";
import { rehearse, type RehearsalParts } from "../rehearsal/rehearse.ts";
import { readMinute, readScript } from "../rehearsal/script.ts";
import type { Turn } from "../rehearsal/stage.ts";
import { summaryOf, summarySentences } from "../rehearsal/summary.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { defaultAddress } from "./default-address.ts";
import { takesMinutes } from "../kitchen/meal-book.ts";
import { entersAt, findMeal, type FoundMeal } from "./find-meal.ts";
import { printData, printMessage } from "./print.ts";

const help = `rehearse MEAL --say SCRIPT: cook a meal on a clock that runs by itself and print the whole conversation.

  MEAL            a meal's name, or the path of its file
  --say SCRIPT    what the cook says and when; docs/rehearsal.md explains the notation
  --from 17:00    when the evening begins; early enough for the meal unless given
  --serve 18:30   when the cook wants to eat; as in the meal's file unless given
  --json          one object a line: every turn, then the summary

Example: rehearse welcome-supper --say recipes/rehearsals/welcome-supper.txt --from 16:30`;

const options = {
  say: { type: "string" },
  from: { type: "string" },
  serve: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly meal: string;
  readonly script: string;
  readonly from: number | null;
  readonly serve: number | null;
  readonly json: boolean;
}

function readTime(text: string | undefined, option: string): Result<number | null, string> {
  if (text === undefined) return ok(null);
  const minute = readMinute(text);
  return minute === null
    ? err(`"${text}" is not a time of day. Write it like 17:00 after ${option}.`)
    : ok(minute);
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [meal, tooMuch] = positionals;
  if (meal === undefined)
    return err("Name the meal to rehearse, for instance: rehearse welcome-supper --say SCRIPT");
  if (tooMuch !== undefined) return err(`rehearse takes one meal; "${tooMuch}" is one word too many.`);
  if (values.say === undefined) return err("Name the script after --say.");
  const from = readTime(values.from, "--from");
  if (!from.ok) return from;
  const serve = readTime(values.serve, "--serve");
  return serve.ok
    ? ok({ meal, script: values.say, from: from.value, serve: serve.value, json: values.json })
    : serve;
}

/** With the usual slack; without a serving time, at five. */
function usualStart({ meal }: FoundMeal, serveAt: number | null): number {
  const fiveInTheAfternoon = 17 * 60;
  if (serveAt === null) return fiveInTheAfternoon;
  const start = entersAt(takesMinutes(meal), serveAt);
  return start >= 0 ? start : start + 24 * 60;
}

const speakers: Record<Turn["who"], string> = { cook: "cook", caller: "caller", kitchen: "refused" };

function printTurn(turn: Turn, json: boolean): void {
  const time = clockSecond(turn.at);
  if (json) {
    printData(JSON.stringify({ ...turn, at: time }));
    return;
  }
  const who =
    turn.who === "caller" && turn.how !== "answer"
      ? { unasked: "caller ·", ring: "ring", shown: "screen" }[turn.how]
      : speakers[turn.who];
  printData(`${time}  ${who.padEnd(8)}  ${turn.said}`);
}

function hearWith(hearer: FileHearer, script: string): RehearsalParts["hear"] {
  return async (file, moment) => {
    const heard = await hearer.hearFile(resolve(dirname(script), file), {
      grammar: grammarFor(moment),
      address: defaultAddress,
      mode: "addressed",
    });
    return heard.ok ? ok(heard.value.heard) : heard;
  };
}

async function readScriptFile(path: string): Promise<ReturnType<typeof readScript>> {
  const text = await readFile(path, "utf8").catch(() => null);
  return text === null
    ? err(`The script ${path} cannot be read. Check its name and that you may read it.`)
    : readScript(text);
}

async function play(wanted: Wanted): Promise<Result<null, string>> {
  const found = await findMeal(wanted.meal);
  if (!found.ok) return found;
  const script = await readScriptFile(wanted.script);
  if (!script.ok) return script;
  const serveAt = wanted.serve ?? found.value.serveAt;
  const from = wanted.from ?? usualStart(found.value, serveAt);
  const turns: Turn[] = [];
  const tell = (turn: Turn): void => {
    turns.push(turn);
    printTurn(turn, wanted.json);
  };
  const hearer = createFileHearer();
  const hear = hearWith(hearer, wanted.script);
  const view = await rehearse({ meal: found.value.meal, from, serveAt, script: script.value, hear, tell });
  hearer.close();
  if (!view.ok) return view;
  const summary = summaryOf(view.value, turns);
  if (wanted.json) printData(JSON.stringify({ summary }));
  else printData(["", ...summarySentences(summary)].join("\n"));
  return ok(null);
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const played = await play(wanted.value);
  if (played.ok) return exit.right;
  printMessage(played.error);
  return exit.refused;
}

/** `rehearse`: a whole evening in a few seconds, with its conversation. */
export const rehearseCommand: CliCommand = {
  name: "rehearse",
  summary: "cook a meal on a virtual clock and print the conversation",
  help,
  run,
};
