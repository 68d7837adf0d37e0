import { byDay } from "../../house/day-words.ts";
import { lastHouseDeed, storedOf } from "../../house/decide.ts";
import { servingsWords } from "../../house/servings-words.ts";
import type { Leftover, MadeDish } from "../../house/leftover.ts";
import { guidance } from "../../keeping/guidance-table.ts";
import { between } from "../../units/quantity.ts";
import { ratio, toNumber } from "../../units/rational.ts";
import type { IntentOf } from "../intent.ts";
import { asksFor, told } from "../outcome.ts";
import type { Outcome } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import {
  asksPlace,
  exactly,
  isAnyMeant,
  leftoversMeant,
  newLeftover,
  orderedInHouse,
  readyOf,
  restOf,
  withThing,
} from "./left.ts";
import type { Cupboard, LeftThing } from "./left.ts";
import { sayHeated } from "./left-heated.ts";
import { sayUndone, undoTick } from "./list.ts";
import { amountIn, leftName, shortLeft } from "./left-words.ts";

const isDish = ({ kind }: LeftThing): boolean => kind === "dish";

/** "Put two servings of the soup in the fridge". */
export function putAway(intent: IntentOf<"PutAway">, cupboard: Cupboard): Outcome {
  const { house } = cupboard;
  const isOpen = (thing: LeftThing): boolean => thing.kind === "dish" && !house.finished.has(thing.dish.dish);
  const heated = heatedOf(intent, cupboard, isOpen);
  if (heated !== null) return told(sayHeated(heated, cupboard));
  return withThing(
    intent.what,
    cupboard,
    isOpen,
    (what) => ({ ...intent, what }),
    (thing) => (thing.kind === "dish" ? putDishAway(thing.dish, intent, cupboard) : told("It is put away.")),
  );
}

/** What was heated and is to be put away again; null: what is meant is another pot of it, or was never heated. */
function heatedOf(
  { what }: IntentOf<"PutAway">,
  cupboard: Cupboard,
  isOpen: (thing: LeftThing) => boolean,
): Leftover | null {
  if (what?.by !== "words") return null;
  const heated = leftoversMeant(what, cupboard).find(({ heatedAt }) => heatedAt !== null);
  const isOther = heated?.of?.session !== cupboard.house.made?.session && isAnyMeant(what, cupboard, isOpen);
  return heated === undefined || isOther ? null : heated;
}

function putDishAway(dish: MadeDish, intent: IntentOf<"PutAway">, cupboard: Cupboard): Outcome {
  const { servings, place } = intent;
  const what = { by: "dish", dish: dish.dish } as const;
  if (servings === null) return asksFor({ ...intent, what }, `How many ${dish.yield.of} are left?`);
  if (place === null) return asksPlace(dish.dish, servings, `${capital(left(dish, servings))}.`);
  const id = newLeftover(cupboard.kitchen);
  const rest = { kind: "servings", servings: exactly(servings) } as const;
  return orderedInHouse(
    cupboard,
    [{ type: "StoreLeftover", id, dish: dish.dish, name: dish.name, rest, place }],
    ({ leftovers }) => {
      const stored = leftovers.get(id);
      return told(stored === undefined ? "Noted." : sayStored(stored, dish, cupboard));
    },
  );
}

const left = (dish: MadeDish, servings: number): string =>
  `${servingsWords(exactly(servings), dish.yield.of)} of ${shortLeft(dish.name, dish.says)} left`;

/** What may have stood warm too long is named, and left to the cook's judgement: nobody has told how it was kept. */
function sayStored(stored: Leftover, dish: MadeDish, cupboard: Cupboard): string {
  const { readyAt } = readyOf(dish, cupboard);
  const stood = readyAt === null ? 0 : between(readyAt, stored.storedAt);
  const until = byDay(stored.useBy, cupboard.kitchen);
  const what = `${capital(amountIn(stored))} in the ${stored.place}`;
  if (stood > guidance.outAtMost.value)
    return `It was out for over two hours: unless you kept it hot or cold, throw it away. ${what}, use it ${until}.`;
  const unknown = stored.isKnown || stored.place === "freezer" ? "" : " I do not know all that is in it.";
  return `${what}, of ${shortLeft(dish.name, dish.says)}. Use it ${until}.${unknown}`;
}

/** "We ate three": of the fridge, or of the meal that has just been cooked, and then the rest is asked after. */
export function ate(intent: IntentOf<"AteLeft">, cupboard: Cupboard): Outcome {
  const { house } = cupboard;
  // What is put away is no longer on the table: of the dishes only those that nobody has spoken of yet.
  const isOpen = (thing: LeftThing): boolean =>
    thing.kind === "leftover" || (!house.finished.has(thing.dish.dish) && isWhole(thing.dish, cupboard));
  return withThing(
    intent.what,
    cupboard,
    isOpen,
    (what) => ({ ...intent, what }),
    (thing) =>
      thing.kind === "leftover"
        ? ateLeftover(thing.leftover, intent.servings, cupboard)
        : ateDish(thing.dish, intent.servings, cupboard),
  );
}

const isWhole = (dish: MadeDish, { house }: Cupboard): boolean => storedOf(house, dish.dish) === ratio(0);

function ateLeftover(leftover: Leftover, servings: number | null, cupboard: Cupboard): Outcome {
  const eaten = servings === null ? null : exactly(servings);
  return orderedInHouse(
    cupboard,
    [{ type: "EatLeftover", id: leftover.id, servings: eaten }],
    ({ leftovers }) => {
      const rest = leftovers.get(leftover.id);
      const name = leftName(leftover);
      if (rest === undefined) return told(`None of the ${name} is left. Enjoy it.`);
      const then = rest.heatedAt === null ? `use it ${byDay(rest.useBy, cupboard.kitchen)}` : "eat it now";
      return told(`${capital(amountIn(rest))} of ${name} left, ${then}.`);
    },
  );
}

function ateDish(dish: MadeDish, servings: number | null, cupboard: Cupboard): Outcome {
  const rest = servings === null ? null : restOf(dish, exactly(servings));
  if (rest === null) return finish(dish, cupboard);
  return asksPlace(dish.dish, toNumber(rest), `${capital(left(dish, toNumber(rest)))}.`);
}

const finish = (dish: MadeDish, cupboard: Cupboard): Outcome =>
  orderedInHouse(cupboard, [{ type: "FinishDish", dish: dish.dish }], () =>
    told(`Nothing is left of the ${shortLeft(dish.name, dish.says)}.`),
  );

/** "Nothing is left of the soup". */
export const nothingLeft = (intent: IntentOf<"NothingLeft">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    () => true,
    (what) => ({ ...intent, what }),
    (thing) =>
      thing.kind === "dish" ? finish(thing.dish, cupboard) : ateLeftover(thing.leftover, null, cupboard),
  );

/** "Throw away the soup": out of the fridge, or off the table. */
export const threwAway = (intent: IntentOf<"ThrewAway">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    () => true,
    (what) => ({ ...intent, what }),
    (thing) => {
      if (thing.kind === "dish") return finish(thing.dish, cupboard);
      const { id } = thing.leftover;
      return orderedInHouse(cupboard, [{ type: "ThrowAwayLeftover", id }], () =>
        told(`${capital(leftName(thing.leftover))} thrown away.`),
      );
    },
  );

/** "The soup is cooling down": since it left the heat. */
export const nowCooling = (intent: IntentOf<"NowCooling">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    isDish,
    (what) => ({ ...intent, what }),
    (thing) => {
      if (thing.kind !== "dish") return told("That is cold already.");
      const { dish, name, says } = thing.dish;
      const since = readyOf(thing.dish, cupboard).offHeatAt ?? cupboard.kitchen.now;
      return orderedInHouse(cupboard, [{ type: "BeginCooling", dish, since }], () =>
        told(
          `I will ask after the ${shortLeft(name, says)}: seventy degrees within two hours of the heat, forty-one within six.`,
        ),
      );
    },
  );

/** "The soup is cold now". */
export const nowCold = (intent: IntentOf<"NowCold">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    (thing) => thing.kind === "dish" && cupboard.house.cooling.some((one) => one.dish === thing.dish.dish),
    (what) => ({ ...intent, what }),
    (thing) =>
      thing.kind === "dish"
        ? orderedInHouse(cupboard, [{ type: "EndCooling", dish: thing.dish.dish }], () =>
            told("Good. Cover it, and put it in the fridge."),
          )
        : told("Good."),
  );

/** "No reminders about leftovers". */
export const noReminders = (cupboard: Cupboard): Outcome =>
  orderedInHouse(cupboard, [{ type: "SilenceReminders" }], () =>
    told("I say no more about what is left of this meal. Two hours at most on the table."),
  );

/** Takes back the last thing that was done in the house, or to the buying list of this device. */
export function undoInHouse(cupboard: Cupboard): Outcome {
  const { house: before, kitchen, list } = cupboard;
  const deed = lastHouseDeed(cupboard.log, kitchen.now);
  // A tick that the house has to know of comes right after its deed there.
  if (list.lastTick !== null && list.lastTick.at >= (deed?.at ?? 0)) return undoTick(list.lastTick, cupboard);
  return orderedInHouse(cupboard, [{ type: "UndoLast" }], (house) =>
    told(
      sayUndone(before.wanted, house.wanted) ??
        (house.leftovers.size > before.leftovers.size
          ? "Undone: it is back again."
          : "Undone, as far as what is left goes."),
    ),
  );
}
