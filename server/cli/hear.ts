import type { CookingMeal } from "../../core/recipe/model.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Kitchen as Moment } from "../../core/talk/model.ts";
import { respond } from "../../core/talk/respond.ts";
import { understand } from "../../core/talk/understand.ts";
import { hours, plus } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { createFileHearer, type FileHearer } from "../hear/hear-file.ts";
import { atMinute } from "../rehearsal/clock-time.ts";
import { cookOn } from "../rehearsal/obliging-cook.ts";
import { Stage } from "../rehearsal/stage.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { defaultAddress } from "./default-address.ts";
import { findMeal } from "./find-meal.ts";
import { printData, printMessage } from "./print.ts";

const usualMeal = "welcome-supper";

const help = `hear FILE.wav…: print what the recogniser hears in recordings, and what is understood.

  --meal MEAL         a meal's name or the path of its file, whose dishes and foods can be named;
                      ${usualMeal} unless given
  --address WORDS     what is said before a command; "${defaultAddress}" unless given
  --json              one object a line for each file: file, heard, intent and, where understood, say

It listens as in the middle of the evening: some steps are done, some go on, and a timer rings.
"heard" are the words in lower case without the address, null where there was no command.`;

const options = {
  meal: { type: "string", default: usualMeal },
  address: { type: "string", default: defaultAddress },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly files: readonly string[];
  readonly meal: string;
  readonly address: string;
  readonly json: boolean;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals: files } = read.value;
  if (files.length === 0) return err("Name one recording or more, for instance: hear what-now.wav");
  const address = values.address.trim().toLowerCase();
  if (!/^[a-z']+( [a-z']+)*$/.test(address))
    return err(`"${values.address}" cannot be an address. Write words after --address.`);
  return ok({ files, meal: values.meal, address, json: values.json });
}

/** The middle of an evening: the cook has done what was called, up to the first ring, which nobody has answered. */
function busyMoment(meal: CookingMeal): Moment {
  const stage = new Stage(meal, atMinute(17 * 60), null, () => undefined);
  cookOn(stage, () => stage.cues.some(({ call }) => call.kind === "ring"), plus(stage.now, hours(12)));
  return stage.moment();
}

/** The same with an open question, so that answers are worth listening for as well. */
function withQuestion(moment: Moment): Moment {
  const question = { kind: "confirm", intent: { type: "EndMeal" }, prompt: "End the meal?" } as const;
  return { ...moment, dialogue: { ...moment.dialogue, question } };
}

/** What one file came to, as it is printed. */
type Line = {
  readonly file: string;
  readonly heard: string | null;
  readonly intent: string | null;
  readonly say?: string;
};

function lineOf(file: string, heard: string | null, moment: Moment): Line {
  const intent = heard === null ? null : (understand(heard, withQuestion(moment)).intent?.type ?? null);
  if (heard === null || intent === null) return { file, heard, intent };
  return { file, heard, intent, say: respond(heard, moment).say };
}

function printLine({ file, heard, intent, say }: Line, json: boolean): void {
  if (json) {
    printData(JSON.stringify({ file, heard, intent, ...(say === undefined ? {} : { say }) }));
    return;
  }
  const answer = say === undefined || say === "" ? "" : `\n  the caller says: ${say}`;
  printData(
    heard === null
      ? `${file}: no command heard`
      : `${file}: "${heard}"\n  understood as: ${intent ?? "nothing"}${answer}`,
  );
}

async function hearAll(hearer: FileHearer, wanted: Wanted, moment: Moment): Promise<ExitCode> {
  const listening = {
    grammar: grammarFor(withQuestion(moment)),
    address: wanted.address,
    mode: "addressed",
  } as const;
  let code: ExitCode = exit.right;
  for (const file of wanted.files) {
    const heard = await hearer.hearFile(file, listening);
    if (heard.ok) {
      printLine(lineOf(file, heard.value.heard, moment), wanted.json);
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
  const found = await findMeal(wanted.value.meal);
  if (!found.ok) {
    printMessage(found.error);
    return exit.refused;
  }
  const hearer = createFileHearer();
  const code = await hearAll(hearer, wanted.value, busyMoment(found.value.meal));
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
