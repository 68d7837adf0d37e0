import { randomUUID } from "node:crypto";
import type { House } from "../../core/house/house.ts";
import { places, type Place, type Rest } from "../../core/house/leftover.ts";
import { instant } from "../../core/units/quantity.ts";
import { parseRational, type Rational } from "../../core/units/rational.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { planChange, type Change } from "./change-left.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { fridgeJson } from "./left-json.ts";
import { fridgeText } from "./left-text.ts";
import { printData, printMessage } from "./print.ts";
import { changeHouse, houseIn } from "./with-house.ts";

const help = `left: tell what is left in the fridge and the freezer, what to use first, and what was kept too long.
left put WHAT: put in a dish of the meal that was cooked last, or anything else by a name of yours.
left eaten WHAT, left heated WHAT, left thrown WHAT: of what is left, all of it or so many servings.
left undo: take back the last thing that was done, within twelve hours.

  --servings N    how many servings: 2, 1.5 or 1/2; all of them unless given, but for put
  --amount WORDS  how much is put in, in your own words: "3 cups"; neither given: some
  --in PLACE      where it is put: fridge, or freezer
  --data DIR      ${dataFolderHelp}
  --json          one object: now, left, useFirst, throwAway, caution. Each in left has id, name, dish, place, servings,
                  servingsOf, amount, storedAt, useBy, source, isKnown, heatedAt and standing (good, past-best, spent,
                  heated or heated-long); null is not known, and with heatedAt: it is cold

Days are from published guidance, the stricter figure, counted from when the dish was ready; what nobody knows keeps by the
strictest of all. What is heated is eaten within two hours and not heated again. While the server runs with the same log
nothing is changed from here: say it to its page.

Example: left put lentil-soup --servings 3`;

const options = {
  servings: { type: "string" },
  amount: { type: "string" },
  in: { type: "string" },
  data: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

const verbs = ["put", "eaten", "heated", "thrown", "undo"] as const;
type Verb = (typeof verbs)[number];

interface Wanted {
  /** null: only tell what is there. */
  readonly change: Change | null;
  readonly folder: string;
  readonly json: boolean;
}

type Given = Readonly<Partial<Record<"servings" | "amount" | "in", string>>>;

/** Which of the options belong to a verb. */
const takes: Readonly<Record<Verb, readonly (keyof Given)[]>> = {
  put: ["servings", "amount", "in"],
  eaten: ["servings"],
  heated: ["servings"],
  thrown: [],
  undo: [],
};

function readServings(given: string | undefined): Result<Rational | null, string> {
  if (given === undefined) return ok(null);
  const read = parseRational(given.trim());
  // As the log has them: at most six figures above and below.
  return read.ok && /^\d{1,6}\/\d{1,6}$/.test(read.value)
    ? read
    : err(`--servings takes a number, for instance 2, 1.5 or 1/2; "${given}" is none.`);
}

function readPlace(given: string | undefined): Result<Place, string> {
  const place = places.find((one) => one === (given ?? "fridge"));
  return place === undefined ? err(`--in takes fridge or freezer, not "${given ?? ""}".`) : ok(place);
}

function readChange(verb: Verb, what: string, given: Given): Result<Change, string> {
  const stray = (["servings", "amount", "in"] as const).find(
    (name) => given[name] !== undefined && !takes[verb].includes(name),
  );
  if (stray !== undefined) return err(`--${stray} does not belong to "left ${verb}".`);
  if (verb === "undo")
    return what === "" ? ok({ verb }) : err(`left undo takes no name; "${what}" is too much.`);
  if (what === "" || what.length > 200) return err(`Name what it is, for instance: left ${verb} lentil-soup`);
  const servings = readServings(given.servings);
  if (!servings.ok) return servings;
  if (verb === "thrown") return ok({ verb, what });
  if (verb !== "put") return ok({ verb, what, servings: servings.value });
  const place = readPlace(given.in);
  if (!place.ok) return place;
  if (servings.value !== null && given.amount !== undefined)
    return err("Give either --servings or --amount, not both.");
  const words = (given.amount ?? "").trim().slice(0, 200);
  const rest: Rest =
    servings.value === null
      ? { kind: "words", words: words === "" ? "some" : words }
      : { kind: "servings", servings: servings.value };
  return ok({ verb, what, rest, place: place.value });
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [word, ...rest] = positionals;
  const [folder, json] = [dataFolder(values.data), values.json];
  if (word === undefined) {
    const stray = (["servings", "amount", "in"] as const).find((name) => values[name] !== undefined);
    return stray === undefined
      ? ok({ change: null, folder, json })
      : err(`--${stray} belongs to what is changed, for instance: left put lentil-soup --servings 3`);
  }
  const verb = verbs.find((one) => one === word);
  if (verb === undefined) return err(`left knows ${verbs.join(", ")}, and no "${word}".`);
  const change = readChange(verb, rest.join(" ").trim(), values);
  return change.ok ? ok({ change: change.value, folder, json }) : change;
}

interface Done {
  readonly house: House;
  /** null: nothing was changed. */
  readonly told: string | null;
}

function carryOut({ change, folder }: Wanted): Result<Done, string> {
  if (change === null) {
    const house = houseIn(folder);
    return house.ok ? ok({ house: house.value, told: null }) : house;
  }
  return changeHouse(folder, (household) => {
    const at = instant(Date.now());
    const planned = planChange(change, household.house(), randomUUID(), at);
    if (!planned.ok) return planned;
    const answer = household.order({ id: randomUUID(), at, order: planned.value.order });
    if (!answer.ok) return err(answer.sentence);
    const house = household.house();
    return ok({ house, told: planned.value.tell(house, at) });
  });
}

function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return Promise.resolve(exit.misuse);
  }
  const done = carryOut(wanted.value);
  if (!done.ok) {
    printMessage(done.error);
    return Promise.resolve(exit.refused);
  }
  const { house, told } = done.value;
  if (told !== null) printMessage(told);
  const now = instant(Date.now());
  printData(wanted.value.json ? JSON.stringify(fridgeJson(house, now)) : fridgeText(house, now));
  return Promise.resolve(exit.right);
}

/** `left`: what is left in fridge and freezer, and what becomes of it. */
export const leftCommand: CliCommand = {
  name: "left",
  summary: "tell what is left in the fridge and what to use first; put in, eaten, heated, thrown, undo",
  help,
  run,
};
