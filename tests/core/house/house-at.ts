import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse, emptyHouseLog } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId } from "../../../core/house/leftover.ts";
import type { Leftover, MadeDish, MadeMeal, Place, Rest } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { unknownKeeping } from "../../../core/keeping/keeping.ts";
import type { Keeping } from "../../../core/keeping/keeping.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at, five } from "../cook/supper.ts";

/** A dish as any other: nothing in it spoils sooner. */
export const usual: Keeping = {
  fridgeDays: 3,
  freezerDays: 90,
  source: "leftovers",
  hazards: [],
  known: "all",
};

export function made(name: string, more: Partial<MadeDish> = {}): MadeDish {
  return {
    dish: dishId(name),
    name: `Tide ${name}`,
    says: [name],
    yield: { servings: 4, of: "bowls" },
    isHot: true,
    keeping: usual,
    offHeatAt: at(60),
    readyAt: at(60),
    ...more,
  };
}

/** Soup and rice that were ready at six, and a salad at ten to six; dinner was over at seven. */
export const supper: MadeMeal = {
  session: "evening-1",
  name: "Tide supper",
  dishes: [
    made("soup"),
    made("pilaf", { keeping: { ...usual, fridgeDays: 1, source: "rice", hazards: ["rice"] } }),
    made("salad", { isHot: false, offHeatAt: null, readyAt: at(50), yield: { servings: 3, of: "plates" } }),
    made("mystery", { keeping: unknownKeeping }),
  ],
  begunAt: five,
  endedAt: at(120),
};

let count = 0;

/** Carries out one order at a minute after five; throws where it is refused. */
export function give(log: HouseLog, minute: number, order: HouseOrder, id = `h${(count += 1)}`): HouseLog {
  const command = { id, at: at(minute), order };
  const decision = decideHouse(command, log);
  if (!decision.ok) throw new Error(`refused: ${decision.error.code}`);
  return appendHouse(log, numberedInHouse(command, log, decision.value));
}

/** Why an order is refused at a minute after five. */
export function refusal(log: HouseLog, minute: number, order: HouseOrder): unknown {
  const decision = decideHouse({ id: "refused", at: at(minute), order }, log);
  return decision.ok ? null : decision.error;
}

/** The house after the supper, then some orders, each at its minute. */
export function afterSupper(...orders: readonly (readonly [number, HouseOrder])[]): HouseLog {
  const noted = give(emptyHouseLog, 0, { type: "NoteMeal", made: { ...supper, endedAt: null } });
  const over = give(noted, 120, { type: "NoteMeal", made: supper });
  return orders.reduce((log, [minute, order]) => give(log, minute, order), over);
}

export const servings = (numerator: number, denominator = 1): Rest => ({
  kind: "servings",
  servings: ratio(numerator, denominator),
});

/** Puts something of a dish of the supper away. */
export const store = (dish: string, rest: Rest, place: Place = "fridge", id = dish): HouseOrder => ({
  type: "StoreLeftover",
  id: leftoverId(id),
  dish: dishId(dish),
  name: dish,
  rest,
  place,
});

/** What is in the fridge under an id. */
export function leftoverIn(log: HouseLog, id: string): Leftover | null {
  return log.house.leftovers.get(leftoverId(id)) ?? null;
}
