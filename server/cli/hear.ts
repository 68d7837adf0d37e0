import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import { silentDialogue, type Kitchen as Moment } from "../../core/talk/model.ts";
import { respond } from "../../core/talk/respond.ts";
import { instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { createFileHearer, type FileHearer } from "../hear/hear-file.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { defaultAddress } from "./default-address.ts";
import { findMeal } from "./find-meal.ts";
import { printData, printMessage } from "./print.ts";

const help = `hear FILE.wav…: print what the recogniser hears in recordings, and what is understood.

  --meal MEAL         a meal's name or the path of its file: its dishes and foods can be named then,
                      as at the beginning of the evening
  --address WORDS     what is said before a command; "${defaultAddress}" unless given
  --json              one object a line for each file: file, heard, intent and, where understood, say

"heard" are the words in lower case without the address, null where there was no command.`;

const options = {
  meal: { type: "string" },
  address: { type: "string", default: defaultAddress },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly files: readonly string[];
  readonly meal: string | undefined;
  readonly address: string;
  readonly json: boolean;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals: files } = read.value;
  if (files.length === 0) return err("Name one recording or more, for instance: hear what-now.wav");
  const address = values.address.trim().toLowerCase();
  if (!/^[a-z']+( [a-z']+)*$/.test(address)) return err(`"${values.address}" cannot be an address. Write words after --address.`);
  return ok({ files, meal: values.meal, address, json: values.json });
}

/** The evening's first moment, at an hour when people cook; without a meal, an empty kitchen. */
function firstMoment(meal: CookingMeal | null): Moment {
  const now = instant(17 * 3_600_000);
  const happening = meal === null ? null : ({ type: "MealBegun", meal, serveAt: null } as const);
  const log = happening === null ? emptyLog : appendEvents(emptyLog, [{ seq: 1, at: now, command: "begin", happening }]);
  const sheet = log.session === null ? null : runSheetOf(log.session, now);
  return { log, sheet, now, utcOffsetMinutes: 0, dialogue: silentDialogue, utteranceId: "utterance" };
}

/** What one file came to, as it is printed. */
type Line = { readonly file: string; readonly heard: string | null; readonly intent: string | null; readonly say?: string };

function understood(file: string, heard: string | null, moment: Moment): Line {
  const reply = heard === null ? null : respond(heard, moment);
  const intent = reply?.intent?.type ?? null;
  return reply === null || intent === null ? { file, heard, intent } : { file, heard, intent, say: reply.say };
}

function printLine({ file, heard, intent, say }: Line, json: boolean): void {
  if (json) {
    printData(JSON.stringify({ file, heard, intent, ...(say === undefined ? {} : { say }) }));
    return;
  }
  const answer = say === undefined || say === "" ? "" : `\n  the caller says: ${say}`;
  printData(heard === null ? `${file}: no command heard` : `${file}: "${heard}"\n  understood as: ${intent ?? "nothing"}${answer}`);
}

async function hearAll(hearer: FileHearer, wanted: Wanted, moment: Moment): Promise<ExitCode> {
  const listening = { grammar: grammarFor(moment), address: wanted.address, mode: "addressed" } as const;
  let code: ExitCode = exit.right;
  for (const file of wanted.files) {
    const heard = await hearer.hearFile(file, listening);
    if (heard.ok) {
      printLine(understood(file, heard.value.heard, moment), wanted.json);
    } else {
      printMessage(heard.error);
      code = exit.refused;
    }
  }
  return code;
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const found = wanted.value.meal === undefined ? null : await findMeal(wanted.value.meal);
  if (found !== null && !found.ok) {
    printMessage(found.error);
    return exit.refused;
  }
  const hearer = createFileHearer();
  const code = await hearAll(hearer, wanted.value, firstMoment(found?.value.meal ?? null));
  hearer.close();
  return code;
}

/** `hear`: recordings through the recogniser and the phrasebook, one by one. */
export const hearCommand: CliCommand = {
  name: "hear",
  summary: "print what is heard and understood in recordings",
  help,
  run,
};
