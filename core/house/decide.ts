import { guidance } from "../keeping/guidance-table.ts";
import { unknownKeeping } from "../keeping/keeping.ts";
import type { DishId } from "../recipe/model.ts";
import { between, days, hours, plus } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { add, compare, ratio, rational, sub, ZERO } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import { err, ok } from "../units/result.ts";
import type { Result } from "../units/result.ts";
import { decideWanted } from "./decide-wanted.ts";
import type { HouseEvent, HouseHappening } from "./events.ts";
import { undoneInHouse } from "./house.ts";
import type { House, HouseLog } from "./house.ts";
import type { MadeDish, MadeMeal, StoredLeftover } from "./leftover.ts";
import type { HouseCommand, HouseOrder } from "./orders.ts";
import type { HouseRefusal } from "./refusal.ts";

type Decision = Result<readonly HouseHappening[], HouseRefusal>;

/** So long after it a deed is no longer the one that "undo" means. */
const undoWithin = hours(12);

/** What should happen? Refuses and changes nothing, or lists what happens; nothing where it was carried out before. */
export function decideHouse({ id, at, order }: HouseCommand, log: HouseLog): Decision {
  if (log.events.some((event) => event.command === id)) return ok([]);
  switch (order.type) {
    case "NoteMeal":
      return ok([{ type: "MealNoted", made: order.made }]);
    case "UndoLast":
      return undoLast(log, at);
    case "StoreLeftover":
      return store(order, log.house, at);
    case "EatLeftover":
    case "ThrowAwayLeftover":
      return change(order, log.house);
    case "WantThing":
    case "DropThing":
    case "BuyThing":
    case "UnbuyThing":
    case "ClearBought":
      return decideWanted(order, log.house);
    case "HeatLeftover":
      return heat(order, log.house);
    case "FinishDish":
    case "BeginCooling":
    case "EndCooling":
    case "SilenceReminders":
      return decideMade(order, log.house, at);
  }
}

/** Turns what was decided into events that follow on the log. */
export function numberedInHouse(
  { id, at }: Pick<HouseCommand, "id" | "at">,
  log: HouseLog,
  happenings: readonly HouseHappening[],
): readonly HouseEvent[] {
  const last = log.events.at(-1)?.seq ?? 0;
  return happenings.map((happening, index) => ({ seq: last + index + 1, at, command: id, happening }));
}

/** The last command by which the cook changed something; null where there is none, or it was too long ago. */
export function lastHouseDeed({ events }: HouseLog, now: Instant): HouseEvent | null {
  const undone = undoneInHouse(events);
  const last = events.findLast(
    ({ command, happening }) =>
      !undone.has(command) && happening.type !== "Undone" && happening.type !== "MealNoted",
  );
  return last === undefined || between(last.at, now) > undoWithin ? null : last;
}

function undoLast(log: HouseLog, at: Instant): Decision {
  const last = lastHouseDeed(log, at);
  return last === null ? err({ code: "NothingToUndo" }) : ok([{ type: "Undone", undoes: last.command }]);
}

/** A dish of the meal that was cooked last; null where it has none of that id. */
export const madeDish = (made: MadeMeal | null, dish: DishId): MadeDish | null =>
  made?.dishes.find((one) => one.dish === dish) ?? null;

/** How many servings of a dish were put away already. */
export function storedOf({ made, leftovers }: House, dish: DishId): Rational {
  const of = [...leftovers.values()].filter(
    (one) => one.of?.dish === dish && one.of.session === made?.session,
  );
  return of.reduce<Rational>(
    (sum, { rest }) => (rest.kind === "words" ? sum : add(sum, rest.servings)),
    ZERO,
  );
}

function store(
  order: Extract<HouseOrder, { readonly type: "StoreLeftover" }>,
  house: House,
  at: Instant,
): Decision {
  const { id, dish: named, name, rest, place } = order;
  if (house.leftovers.has(id)) return err({ code: "StoredAlready", name });
  if (rest.kind === "servings" && compare(rational(rest.servings), ZERO) <= 0)
    return err({ code: "NoAmount" });
  const dish = named === null ? null : madeDish(house.made, named);
  if (named !== null && dish === null) return err({ code: "NoSuchDish", asked: name });
  if (isHeated(house, dish, name)) return err({ code: "NotKeptAgain", name: dish?.name ?? name });
  const most = dish === null ? null : sub(ratio(dish.yield.servings), storedOf(house, dish.dish));
  if (dish !== null && most !== null && rest.kind === "servings" && compare(rest.servings, most) > 0)
    return err({ code: "MoreThanMade", name: dish.name, servings: most, of: dish.yield.of });
  const leftover: StoredLeftover = {
    id,
    name: dish?.name ?? name,
    of: dish === null || house.made === null ? null : { session: house.made.session, dish: dish.dish },
    servingsOf: dish?.yield.of ?? "servings",
    rest,
    place,
    storedAt: at,
    ...keptUntil(dish, place, at),
  };
  const isCooling = dish !== null && house.cooling.some((one) => one.dish === dish.dish);
  return ok([
    { type: "LeftoverStored", leftover },
    ...(isCooling && house.made !== null
      ? [{ type: "CoolingEnded", session: house.made.session, dish: dish.dish } as const]
      : []),
  ]);
}

/** Whether it was heated, and nobody has said yet what became of it: then it is not put away a second time. */
const isHeated = ({ leftovers, made }: House, dish: MadeDish | null, name: string): boolean =>
  [...leftovers.values()].some(
    (one) =>
      one.heatedAt !== null &&
      (dish === null
        ? one.name.toLowerCase() === name.toLowerCase()
        : one.of?.dish === dish.dish && one.of.session === made?.session),
  );

/** The days count from when the dish was ready: it does not grow younger on the table. */
function keptUntil(
  dish: MadeDish | null,
  place: StoredLeftover["place"],
  at: Instant,
): Pick<StoredLeftover, "useBy" | "source" | "isKnown"> {
  const keeping = dish?.keeping ?? unknownKeeping;
  const isKnown = keeping.known === "all";
  const from = dish?.readyAt ?? at;
  return place === "freezer"
    ? { useBy: plus(from, days(keeping.freezerDays)), source: guidance.freezerDays.source, isKnown }
    : { useBy: plus(from, days(keeping.fridgeDays)), source: keeping.source, isKnown };
}

function change(
  order: Extract<HouseOrder, { readonly type: "EatLeftover" | "ThrowAwayLeftover" }>,
  { leftovers }: House,
): Decision {
  const leftover = leftovers.get(order.id);
  if (leftover === undefined) return err({ code: "NoSuchLeftover" });
  const { id, name, rest, servingsOf: of } = leftover;
  if (order.type === "ThrowAwayLeftover") return ok([{ type: "LeftoverThrownAway", id }]);
  if (order.servings === null) return ok([{ type: "LeftoverEaten", id }]);
  if (compare(rational(order.servings), ZERO) <= 0) return err({ code: "NoAmount" });
  if (rest.kind === "words") return err({ code: "AmountNotKnown", name, words: rest.words });
  const more = compare(rational(order.servings), rest.servings);
  if (more > 0) return err({ code: "MoreThanLeft", name, servings: rest.servings, of });
  return ok([
    more === 0 ? { type: "LeftoverEaten", id } : { type: "LeftoverLessened", id, servings: order.servings },
  ]);
}

/** Only what was cold is heated: of what is left some, or all. */
function heat(
  { id, some }: Extract<HouseOrder, { readonly type: "HeatLeftover" }>,
  { leftovers }: House,
): Decision {
  const leftover = leftovers.get(id);
  if (leftover === undefined) return err({ code: "NoSuchLeftover" });
  const { name, rest, servingsOf: of } = leftover;
  if (leftover.heatedAt !== null) return err({ code: "HeatedAlready", name });
  if (some === null) return ok([{ type: "LeftoverHeated", id, some }]);
  if (leftovers.has(some.as)) return err({ code: "StoredAlready", name });
  if (compare(rational(some.servings), ZERO) <= 0) return err({ code: "NoAmount" });
  if (rest.kind === "words") return err({ code: "HeatAllOfIt", name, words: rest.words });
  const more = compare(rational(some.servings), rest.servings);
  if (more > 0) return err({ code: "MoreThanCold", name, servings: rest.servings, of });
  return ok([{ type: "LeftoverHeated", id, some: more === 0 ? null : some }]);
}

type OfMade = Extract<
  HouseOrder,
  { readonly type: "FinishDish" | "BeginCooling" | "EndCooling" | "SilenceReminders" }
>;

function decideMade(order: OfMade, house: House, at: Instant): Decision {
  const { made } = house;
  if (made === null) return err({ code: "NothingCooked" });
  const { session } = made;
  if (order.type === "SilenceReminders") return ok([{ type: "RemindersSilenced", session }]);
  const dish = madeDish(made, order.dish);
  if (dish === null) return err({ code: "NoSuchDish", asked: order.dish });
  const { name } = dish;
  const isCooling = house.cooling.some((one) => one.session === session && one.dish === order.dish);
  const cold = isCooling ? [{ type: "CoolingEnded", session, dish: order.dish } as const] : [];
  switch (order.type) {
    case "FinishDish":
      return ok([{ type: "DishFinished", session, dish: order.dish }, ...cold]);
    case "BeginCooling": {
      const since = order.since > at ? at : order.since;
      return between(since, at) > guidance.coolInAll.value.within
        ? err({ code: "CoolingLongAgo", name })
        : ok([{ type: "CoolingBegun", session, dish: order.dish, name, since }]);
    }
    case "EndCooling":
      return isCooling ? ok(cold) : err({ code: "NotCooling", name });
  }
}
