/**
 * How good and how fast the planning engine is: on made-up meals and on public instances of the same problem.
 *
 * npm run bench:plan                            all marks; about six minutes
 * npm run bench:plan -- --only meals            some of them: first, meals, j30, j60, max, jobshop
 * npm run bench:plan -- --folder DIR            the public instances lie there, a folder a set
 * npm run bench:plan -- --exact [all]           prove the made-up meals' ends first: those not kept yet, or all
 * npm run --silent bench:plan -- DIR [--ms N]   the instances in DIR, a line of JSON each
 */
import { existsSync } from "node:fs";
import { parseArgs } from "node:util";
import { instancesFolder } from "../scheduling/instances.ts";
import { print, printMachine } from "./figures.ts";
import { warmUp } from "./plan/answer.ts";
import { answerFolder } from "./plan/answer-folder.ts";
import { markFirstAnswers, markJ30, markJ60, markJobShop, markMaximumLags, markMeals } from "./plan/marks.ts";
import { proveMeals } from "./plan/prove-meals.ts";

const ofMeals = { first: markFirstAnswers, meals: markMeals };
const ofInstances = { j30: markJ30, j60: markJ60, max: markMaximumLags, jobshop: markJobShop };
const known = [...Object.keys(ofMeals), ...Object.keys(ofInstances)];

function printMarks(only: string | null, folder: string | null): void {
  printMachine();
  warmUp();
  const isAsked = (name: string): boolean => only === null || only === name;
  for (const [name, mark] of Object.entries(ofMeals)) if (isAsked(name)) mark();
  for (const [name, mark] of Object.entries(ofInstances)) {
    if (!isAsked(name)) continue;
    if (folder === null) print(`${name} is passed over: the public instances are not on this machine.`);
    else mark(folder);
  }
}

function refuse(sentence: string): void {
  process.stderr.write(`${sentence}\n`);
  process.exitCode = 2;
}

const options = {
  ms: { type: "string", default: "100" },
  only: { type: "string" },
  folder: { type: "string" },
  exact: { type: "boolean", default: false },
} as const;

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({ allowPositionals: true, strict: true, options });
  const ms = Number(values.ms);
  const [first] = positionals;
  if (!(ms > 0)) return refuse("--ms wants a number of milliseconds above 0.");
  if (values.only !== undefined && !known.includes(values.only))
    return refuse(`--only knows ${known.join(", ")}.`);
  if (values.exact) return proveMeals(first === "all" ? "all" : "missing");
  const folder = first ?? values.folder;
  if (folder !== undefined && !existsSync(folder)) return refuse(`There is no folder ${folder}.`);
  if (first !== undefined) return answerFolder(first, ms);
  printMarks(values.only ?? null, values.folder ?? instancesFolder());
}

try {
  await main();
} catch (error) {
  if (!(error instanceof TypeError && "code" in error)) throw error;
  refuse(error.message);
}
