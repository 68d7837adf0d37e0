import type { House } from "../../core/house/house.ts";
import type { Leftover } from "../../core/house/leftover.ts";
import { firstToUse, isToEat, standingOf } from "../../core/house/standing.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { columns, wrapped, type Column } from "./columns.ts";
import { amountOf, becauseOf, leftCaution, stateOf, toDo } from "./left-words.ts";

const width = 80;

const shape: readonly Column[] = [
  { most: 24, align: "left" },
  { most: 16, align: "left" },
  { most: 36, align: "left" },
];

const inWords = (leftovers: readonly Leftover[], now: Instant): string =>
  leftovers.map((one) => `${one.name}, ${amountOf(one)}, ${stateOf(one, now)}`).join("; ");

const line = (name: string, leftovers: readonly Leftover[], now: Instant): readonly string[] =>
  leftovers.length === 0 ? [] : wrapped(`${name}: ${inWords(leftovers, now)}.`, width);

/** What is in one place, one below the other; columns of one width all the way down. */
function table(name: string, leftovers: readonly Leftover[], now: Instant): readonly string[] {
  if (leftovers.length === 0) return [];
  const ruler = ["x".repeat(24), "x".repeat(16), ""];
  const rows = leftovers.map((one) => [one.name, amountOf(one), `${toDo(one, now)} (${becauseOf(one)})`]);
  return ["", name, ...columns([ruler, ...rows], shape).slice(1)];
}

/** What is left for people, what to use first at the top; at most 80 letters wide. */
export function fridgeText({ leftovers }: House, now: Instant): string {
  const all = firstToUse(leftovers);
  if (all.length === 0) return "Nothing is left in the fridge or the freezer, as far as is known.";
  const isOver = (one: Leftover): boolean => ["spent", "heated-long"].includes(standingOf(one, now));
  const heated = all.filter((one) => standingOf(one, now) === "heated");
  const [first] = all.filter((one) => isToEat(one, now));
  const cold = (place: Leftover["place"]): readonly Leftover[] =>
    all.filter((one) => one.place === place && one.heatedAt === null);
  return [
    ...line("Throw away", all.filter(isOver), now),
    ...line("Eat now", heated, now),
    ...line("Use first", first === undefined ? [] : [first], now),
    ...table("FRIDGE", cold("fridge"), now),
    ...table("FREEZER", cold("freezer"), now),
    ...table(
      "HEATED",
      all.filter(({ heatedAt }) => heatedAt !== null),
      now,
    ),
    "",
    ...wrapped(leftCaution, width),
  ].join("\n");
}
