import { timesOf, type KnownPace } from "../../core/pace/pace.ts";
import { kindWords, sayLearnt, sayPlanned } from "../../core/pace/say-pace.ts";
import { instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { PaceBook } from "../kitchen/pace-book.ts";
import { storeSentence, type MealStore } from "../store/meal-store.ts";
import { columns } from "./columns.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { printData, printMessage } from "./print.ts";
import { withLog } from "./with-log.ts";

const help = `pace: tell how long you take for each kind of work, against what the recipes say.

  --forget    forget all that was learnt and set until now; the evenings themselves stay in the log
  --data DIR  ${dataFolderHelp}
  --json      one object: paces, each with kind, planned, learnt, wish, steps, evenings; 1.3 is three tenths longer

It is learnt from the evenings in the log, from two evenings and five steps on, and never leaves this machine. Only work
by hand is planned by it: what is on the heat, what rests or chills and every timer keep the recipe's time.

Example: pace --json`;

const options = {
  forget: { type: "boolean", default: false },
  data: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly forget: boolean;
  readonly json: boolean;
  readonly folder: string;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [tooMuch] = positionals;
  if (tooMuch !== undefined) return err(`pace takes no file; "${tooMuch}" is one word too many.`);
  return ok({ forget: values.forget, json: values.json, folder: dataFolder(values.data) });
}

function paces(store: MealStore, forget: boolean): Result<readonly KnownPace[], string> {
  const forgotten = forget ? store.forgetPace(instant(Date.now())) : ok(null);
  if (!forgotten.ok) return err(storeSentence(forgotten.error));
  const known = new PaceBook(store).known();
  return known.ok ? known : err(storeSentence(known.error));
}

const paceText = (known: readonly KnownPace[]): string =>
  columns(
    known.map((pace) => [kindWords[pace.kind], `${sayLearnt(pace)} ${sayPlanned(pace)}`.trim()]),
    [
      { most: 24, align: "left" },
      { most: 54, align: "left" },
    ],
  ).join("\n");

const paceJson = (known: readonly KnownPace[]): string =>
  JSON.stringify({
    paces: known.map((pace) => ({
      kind: pace.kind,
      planned: timesOf(pace),
      learnt: pace.times,
      wish: pace.wish,
      steps: pace.steps,
      evenings: pace.evenings,
    })),
  });

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const { forget, json, folder } = wanted.value;
  const known = withLog(folder, (store) => paces(store, forget));
  if (!known.ok) {
    printMessage(known.error);
    return exit.refused;
  }
  if (forget) printMessage("Forgotten. From the next meal on everything is planned as the recipes say.");
  printData(json ? paceJson(known.value) : paceText(known.value));
  return exit.right;
}

/** `pace`: what was learnt of the cook's own pace, and how to be rid of it. */
export const paceCommand: CliCommand = {
  name: "pace",
  summary: "tell how long you take against what the recipes say; forget it",
  help,
  run,
};
