import type { PacesOf } from "../../core/pace/known-paces.ts";
import { calendarOf } from "../../core/plan/calendar.ts";
import { helpers, type Helper } from "../../core/plan/worker.ts";
import { leastLull, mostLull } from "../../core/plan/lull.ts";
import { instant, minutes, seconds, type Instant, type Seconds } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { findMeal } from "./find-meal.ts";
import { insteadHelp, mealTaking, readInstead, type Instead } from "./instead.ts";
import { planJson } from "./plan-json.ts";
import { planText } from "./plan-text.ts";
import { plannedMeal, type PlannedMeal } from "./planned-meal.ts";
import { printData, printMessage } from "./print.ts";
import { readServing, servingMoment, wallClock, type WantedServing } from "./serving-time.ts";
import { pacesIn } from "./with-log.ts";
import { writeCalendar } from "./write-calendar.ts";

const help = `plan MEAL: print who does what and when, from the first step to the table.

  MEAL             a meal's name, or the path of its file
  --serve 18:30    when you want to eat, today; "tomorrow 18:30" is understood, and so is "half past six".
                   Times are then those of the clock; without it they are minutes from the start
  --cooks 2        how many cook together, from 1 to 3
  --lull 10        nothing to do by hand in the last ten minutes before serving, as far as the recipes allow it and
                   dinner is no later for it; what stays there is told
  --instead "red lentils=brown lentils"
                   ${insteadHelp}
  --json           one object: steps, elapsedMin, broken, onTime, ovenMoves, ways, leaveOut, lull, paces; minutes from the
                   start of cooking. Each step says whether dinner waits for it (critical) and how much later
                   it may start (slackMin)
  --as-written     reckon with the recipes' times, also where your own pace is known
  --data DIR       ${dataFolderHelp}
  --calendar FILE  write the big moments, with reminders, as a calendar file (iCalendar); without --serve as if
                   you began now

Where dinner cannot be ready in time, the soonest is planned and told, and without which dish it would be sooner;
whether to leave one out is for you to say. A star stands before the steps that dinner waits for: when one of them
slips, dinner slips. A step that can be done in several ways is done in the one that suits the evening best, and the
reason is told. Work by hand takes as long as you have taken on the evenings before, where the meal log tells.

Example: plan welcome-supper --serve 18:30 --calendar supper.ics`;

const options = {
  serve: { type: "string" },
  cooks: { type: "string", default: "1" },
  lull: { type: "string" },
  instead: { type: "string", multiple: true },
  "as-written": { type: "boolean", default: false },
  data: { type: "string" },
  json: { type: "boolean", default: false },
  calendar: { type: "string" },
} as const;

interface Wanted {
  readonly meal: string;
  readonly serve: WantedServing | null;
  readonly helping: readonly Helper[];
  /** How long before serving the hands are to be free; null: not at all. */
  readonly lull: Seconds | null;
  /** Where the cook's own pace is looked for; null: the recipes' times hold. */
  readonly paceFrom: string | null;
  readonly instead: readonly Instead[];
  readonly json: boolean;
  readonly calendar: string | null;
}

function readLull(text: string | undefined): Result<Seconds | null, string> {
  if (text === undefined) return ok(null);
  const length = /^\d{1,3}$/.test(text) ? minutes(Number(text)) : Number.NaN;
  const isRight = length >= leastLull && length <= mostLull;
  return isRight
    ? ok(seconds(length))
    : err("--lull takes whole minutes before serving, from 1 to 60, for instance: --lull 10");
}

function readWanted(args: readonly string[], now: Instant): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [meal, tooMuch] = positionals;
  if (meal === undefined)
    return err("Name the meal to plan, for instance: plan welcome-supper --serve 18:30");
  if (tooMuch !== undefined) return err(`plan takes one meal; "${tooMuch}" is one word too many.`);
  if (values.calendar === "") return err("Name a file after --calendar, for instance: supper.ics");
  const lull = readLull(values.lull);
  if (!lull.ok) return lull;
  const cooks = Number(values.cooks);
  if (!Number.isInteger(cooks) || cooks < 1 || cooks > 1 + helpers.length)
    return err(`--cooks takes a number from 1 to ${1 + helpers.length}; "${values.cooks}" is none.`);
  const instead = readInstead(values.instead);
  if (!instead.ok) return instead;
  const rest = {
    meal,
    instead: instead.value,
    helping: helpers.slice(0, cooks - 1),
    lull: lull.value,
    paceFrom: values["as-written"] ? null : dataFolder(values.data),
    json: values.json,
    calendar: values.calendar ?? null,
  };
  if (values.serve === undefined) return ok({ ...rest, serve: null });
  const serve = readServing(values.serve, now);
  return serve.ok ? ok({ ...rest, serve: serve.value }) : serve;
}

/** A log that cannot be read must not keep a plan from anyone: it is told, and the recipes' times hold. */
function pacesFrom(folder: string | null): PacesOf {
  const known = folder === null ? null : pacesIn(folder);
  if (known?.ok === false) printMessage(`${known.error} So this is planned as the recipes say.`);
  return known?.ok === true ? known.value : () => [];
}

async function planned(wanted: Wanted, now: Instant): Promise<Result<PlannedMeal, string>> {
  const serveAt = wanted.serve === null ? ok(null) : servingMoment(wanted.serve, now);
  if (!serveAt.ok) return serveAt;
  const pacesOf = pacesFrom(wanted.paceFrom);
  const found = await findMeal(wanted.meal);
  if (!found.ok) return found;
  const meal = mealTaking(found.value.meal, wanted.instead);
  if (!meal.ok) return meal;
  const asked = { ...wanted, serveAt: serveAt.value, pacesOf };
  return ok(plannedMeal({ ...found.value, meal: meal.value }, asked, now));
}

/** The day is part of every UID: the same meal next week is another evening, the same evening planned anew is not. */
function keepCalendar(evening: PlannedMeal, file: string, now: Instant): Promise<Result<null, string>> {
  const day = wallClock.day(evening.serveAt ?? evening.beginsAt);
  return writeCalendar(file, calendarOf(evening, { stamp: now, uidBase: `${day}.stovecall` }));
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const now = instant(Date.now());
  const wanted = readWanted(args, now);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const evening = await planned(wanted.value, now);
  if (!evening.ok) {
    printMessage(evening.error);
    return exit.refused;
  }
  const { json, calendar } = wanted.value;
  // First the sheet: it is right whatever becomes of the file.
  printData(json ? JSON.stringify(planJson(evening.value)) : planText(evening.value, wallClock));
  if (calendar === null) return exit.right;
  const kept = await keepCalendar(evening.value, calendar, now);
  printMessage(kept.ok ? `The calendar file is ${calendar}.` : kept.error);
  return kept.ok ? exit.right : exit.refused;
}

/** `plan`: the run sheet of a meal, before anyone lights the stove. */
export const planCommand: CliCommand = {
  name: "plan",
  summary: "print a meal's run sheet; write it as a calendar file",
  help,
  run,
};
