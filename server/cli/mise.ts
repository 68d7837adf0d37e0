import { shortName } from "../../core/cook/say-call.ts";
import type { Preparation } from "../../core/mise/mise.ts";
import { miseOf, stepsThatPrepare } from "../../core/mise/mise.ts";
import { rawCaution, writePreparation } from "../../core/mise/say-mise.ts";
import type { RunSheet, Task } from "../../core/plan/model.ts";
import { plan } from "../../core/plan/plan.ts";
import { expandTasks } from "../../core/plan/tasks.ts";
import { coldStart, inBestWays } from "../../core/plan/ways.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { formatAmount } from "../../core/units/amount.ts";
import { between, inMinutes, instant, type Instant } from "../../core/units/quantity.ts";
import { wrapped } from "./columns.ts";
import { exit, type CliCommand, type ExitCode } from "./command.ts";
import { findMeal } from "./find-meal.ts";
import { printData, printMessage } from "./print.ts";
import { readMeal } from "./read-meal.ts";

const help = `mise MEAL: print the mise en place, what is to be prepared before the steps call for it, over all dishes.

  MEAL    a meal's name, or the path of its file
  --json  one object: meal, caution, prepare; each with what to do, the food, the exact amounts, and for each dish the
          amount, the step it is for and when that begins by the run sheet (minutes from the start)

What is needed first stands first; the same food, and work in the same place, stand together where that makes nothing
late. What a step tells you to cut or wash itself is left to it. Words that are not understood stay as in the recipe.

Example: mise welcome-supper`;

/** What is printed: the meal from a cold kitchen, begun at minute nought. */
interface Mise {
  readonly meal: CookingMeal;
  readonly list: readonly Preparation[];
  readonly tasks: readonly Task[];
}

const start = instant(0);

function miseFor(found: CookingMeal): Mise {
  const meal = inBestWays(found, null, start, expandTasks, []);
  const tasks = expandTasks(meal);
  const sheet: RunSheet = plan({ ...coldStart(meal, null, start, []), tasks });
  return { meal, tasks, list: miseOf({ tasks, progress: new Map(), prepared: new Set() }, sheet, start) };
}

const minute = (at: Instant): number => Math.floor(inMinutes(between(start, at)));

const width = 80;

function lines(text: string, indent: string, first = indent): readonly string[] {
  return wrapped(text, width - indent.length).map((line, at) => `${at === 0 ? first : indent}${line}`);
}

function miseText({ meal, list, tasks }: Mise): string {
  const caution = rawCaution(list);
  const steps = [...new Set(stepsThatPrepare(tasks).map(({ step }) => step.title))];
  return [
    list.length === 0 ? `${meal.name}: nothing is to be prepared beforehand.` : `${meal.name}: prepare`,
    ...list.flatMap((one, at) => [
      ...lines(writePreparation(one), "      ", `${String(at + 1).padStart(4)}  `),
      ...one.portions.flatMap(({ dish, step, neededAt }) =>
        lines(`${shortName(dish)}: ${step.title}, minute ${minute(neededAt)}`, "          ", "        - "),
      ),
    ]),
    ...(steps.length === 0 ? [] : ["", ...lines(`The steps themselves see to: ${steps.join("; ")}.`, "")]),
    ...(caution === null ? [] : ["", ...lines(caution, "")]),
  ].join("\n");
}

/** The mise en place as `mise --json` prints it; amounts exact, minutes from the start of cooking. */
export interface MiseJson {
  readonly meal: string;
  readonly caution: string | null;
  readonly prepare: readonly {
    readonly do: string;
    readonly food: string;
    readonly amounts: readonly string[];
    readonly optional: boolean;
    readonly for: readonly {
      readonly dish: string;
      readonly step: string;
      readonly amount: string;
      readonly atMin: number;
    }[];
  }[];
}

const miseJson = ({ meal, list }: Mise): MiseJson => ({
  meal: meal.id,
  caution: rawCaution(list),
  prepare: list.map((one) => ({
    do: writePreparation(one),
    food: one.food,
    amounts: one.amounts.map(formatAmount),
    optional: one.isOptional,
    for: one.portions.map(({ dish, step, amount, neededAt }) => ({
      dish: dish.id,
      step: step.id,
      amount: formatAmount(amount),
      atMin: minute(neededAt),
    })),
  })),
});

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readMeal(args, "mise", "prepare");
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const found = await findMeal(wanted.value.meal);
  if (!found.ok) {
    printMessage(found.error);
    return exit.refused;
  }
  const mise = miseFor(found.value.meal);
  printData(wanted.value.json ? JSON.stringify(miseJson(mise)) : miseText(mise));
  return exit.right;
}

/** `mise`: what is to be prepared before a meal is cooked. */
export const miseCommand: CliCommand = {
  name: "mise",
  summary: "print the mise en place: what to prepare over all dishes, and for which step",
  help,
  run,
};
