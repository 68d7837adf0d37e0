import type { House } from "../../core/house/house.ts";
import { leftoverId } from "../../core/house/leftover.ts";
import type { Leftover, MadeDish, Place, Rest } from "../../core/house/leftover.ts";
import type { HouseOrder } from "../../core/house/orders.ts";
import { firstToUse, isToEat, standingOf } from "../../core/house/standing.ts";
import { guidance } from "../../core/keeping/guidance-table.ts";
import { isWithin } from "../../core/talk/find.ts";
import { between, type Instant } from "../../core/units/quantity.ts";
import type { Rational } from "../../core/units/rational.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { amountOf, toDo } from "./left-words.ts";

/** What is to be changed in the house. */
export type Change =
  | { readonly verb: "put"; readonly what: string; readonly rest: Rest; readonly place: Place }
  /** null: all of it. */
  | { readonly verb: "eaten" | "heated"; readonly what: string; readonly servings: Rational | null }
  | { readonly verb: "thrown"; readonly what: string }
  | { readonly verb: "undo" };

/** An order, and what is to be told of it once it was carried out. */
export interface Planned {
  readonly order: HouseOrder;
  readonly tell: (after: House, now: Instant) => string;
}

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** What is meant by words: an id, a whole name, or else every name that has them. */
function named<T>(said: string, all: readonly T[], namesOf: (one: T) => readonly string[]): readonly T[] {
  const exact = all.filter((one) => namesOf(one).some((name) => isSame(name, said)));
  return exact.length > 0 ? exact : all.filter((one) => namesOf(one).some((name) => isWithin(said, name)));
}

/** A dish of the meal that was cooked last; null: it is none of them. Error: several are meant. */
function dishCalled(said: string, { made }: House): Result<MadeDish | null, string> {
  const dishes = named(said, made?.dishes ?? [], (one) => [one.dish, one.name, ...one.says]);
  return dishes.length > 1 ? whichOne(dishes) : ok(dishes[0] ?? null);
}

const whichOne = (all: readonly { readonly name: string }[]): Result<never, string> =>
  err(`Which one: ${[...new Set(all.map(({ name }) => name))].join(", ")}? Give its whole name.`);

/**
 * Something that is left. Of one name what was heated goes before what is cold, and then what is to be used first; to
 * be heated is what is cold and good.
 */
function leftoverCalled(
  said: string,
  { leftovers }: House,
  isFirst: (one: Leftover) => boolean,
): Result<Leftover, string> {
  const all = firstToUse(leftovers);
  const found = named(said, all, ({ id, name }) => [id, name]);
  const [first] = [...found.filter(isFirst), ...found];
  if (first === undefined) {
    const there = [...new Set(all.map(({ name }) => name))].join(", ");
    return err(
      `Nothing is left that is called ${said}. ${there === "" ? "Nothing is left at all." : `There is: ${there}.`}`,
    );
  }
  return found.every(({ name }) => isSame(name, first.name)) ? ok(first) : whichOne(found);
}

function put(
  { what, rest, place }: Extract<Change, { readonly verb: "put" }>,
  house: House,
  id: string,
): Result<Planned, string> {
  const dish = dishCalled(what, house);
  if (!dish.ok) return dish;
  const left = leftoverId(id);
  const name = dish.value?.name ?? what;
  const readyAt = dish.value?.readyAt ?? null;
  return ok({
    order: { type: "StoreLeftover", id: left, dish: dish.value?.dish ?? null, name, rest, place },
    tell: ({ leftovers }, now) => {
      const stored = leftovers.get(left);
      if (stored === undefined) return "Noted.";
      const isLong = readyAt !== null && between(readyAt, now) > guidance.outAtMost.value;
      const warning = isLong
        ? "It was ready more than two hours ago: unless you kept it hot or cold, throw it away. "
        : "";
      return `${warning}In the ${place}: ${stored.name}, ${amountOf(stored)}, ${toDo(stored, now)}.`;
    },
  });
}

/** Makes an order of what is wanted. @param id a new one, for what comes into being. Error: one sentence. */
export function planChange(change: Change, house: House, id: string, now: Instant): Result<Planned, string> {
  switch (change.verb) {
    case "put":
      return put(change, house, id);
    case "undo":
      return ok({ order: { type: "UndoLast" }, tell: () => "Undone." });
    case "heated":
      return heat(change, house, id, now);
    case "eaten":
    case "thrown": {
      const left = leftoverCalled(change.what, house, ({ heatedAt }) => heatedAt !== null);
      if (!left.ok) return left;
      const { id: of, name, heatedAt } = left.value;
      const told = `${name}${heatedAt === null ? "" : ", heated"}`;
      if (change.verb === "thrown")
        return ok({ order: { type: "ThrowAwayLeftover", id: of }, tell: () => `Thrown away: ${told}.` });
      return ok({
        order: { type: "EatLeftover", id: of, servings: change.servings },
        tell: ({ leftovers }) => {
          const rest = leftovers.get(of);
          return `Eaten: ${told}. ${rest === undefined ? "Nothing of it is left" : `Left of it: ${amountOf(rest)}`}.`;
        },
      });
    }
  }
}

function heat(
  { what, servings }: Extract<Change, { readonly verb: "eaten" | "heated" }>,
  house: House,
  id: string,
  now: Instant,
): Result<Planned, string> {
  const left = leftoverCalled(what, house, (one) => isToEat(one, now));
  if (!left.ok) return left;
  const { id: of, name } = left.value;
  if (standingOf(left.value, now) === "spent") return err(`${name} is past its day: throw it away.`);
  const some = servings === null ? null : { servings, as: leftoverId(id) };
  return ok({
    order: { type: "HeatLeftover", id: of, some },
    tell: () =>
      `Heated: ${name}. 165 °F all through, within two hours; eat it now, for it is not kept a second time.`,
  });
}
