import { cookOn } from "../../server/rehearsal/obliging-cook.ts";
import { atMinute } from "../../server/rehearsal/clock-time.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { Stage } from "../../server/rehearsal/stage.ts";
import { findMeal } from "../../server/cli/find-meal.ts";
import type { FoodsAtHand, Kitchen } from "../../core/talk/model.ts";
import { decide, numbered } from "../../core/cook/decide.ts";
import { appendEvents } from "../../core/cook/fold.ts";
import { appendHouse, emptyHouseLog } from "../../core/house/house.ts";
import { madeMeal } from "../../core/house/made-meal.ts";
import { foodTalk } from "../../core/talk/food-talk.ts";
import { keyOfThing } from "../../core/house/wanted.ts";
import { buyingList } from "../../core/shop/buying-list.ts";
import { fridgeUnknown } from "../../core/shop/from-fridge.ts";
import { writtenList } from "../../core/shop/written-list.ts";
import { loadFoods } from "../../server/pantry/load-foods.ts";
import { loadPlaces } from "../../server/pantry/load-places.ts";
import { noDeviceList } from "../../core/shop/at-hand.ts";
import { houseTalk } from "../../core/talk/house-talk.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import { respond } from "../../core/talk/respond.ts";
import { hours, plus } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";

/**
 * Moments of one evening, the welcome supper a good hour after it was begun: five dishes under way, six timers, the
 * dough ringing. `busy` is nobody's turn; in the others the caller has just answered, and more can be said.
 */
export type EveningMoments = {
  readonly busy: Kitchen;
  /** Asked to be sure: "End the meal?" */
  readonly confirm: Kitchen;
  /** Asked which of several timers is meant. */
  readonly which: Kitchen;
  /** Has read out the beginning of a long list. */
  readonly more: Kitchen;
  /** Has just set a timer, whose figure may be corrected. */
  readonly corrected: Kitchen;
  /** Somebody has come to help. */
  readonly helped: Kitchen;
  /** Dinner is over, and what is left is put away. */
  readonly served: Kitchen;
  /** Somebody looks at the list of what to buy for that meal, with candles and nutmeg wanted besides. */
  readonly shopping: Kitchen;
  /** Two other meals under way, of three and of five dishes; nobody's turn. */
  readonly breakfast: Kitchen;
  readonly lunch: Kitchen;
};

/** The name of one of them. */
export type MomentName = keyof EveningMoments;

/** Cooks the evening up to there, as the recipes say; throws where the repository's own meal cannot be cooked. */
export async function eveningMoments(): Promise<EveningMoments> {
  const busy = await underWay("welcome-supper", 17);
  const after = (said: string): Kitchen => ({ ...busy, dialogue: respond(said, busy).dialogue });
  return {
    busy,
    confirm: after("end the meal"),
    which: after("how much juice"),
    more: after("what goes into the soup"),
    corrected: after("set a timer for fifty minutes"),
    served: served(busy),
    shopping: await shoppingFor(busy),
    helped: carriedOut("someone is helping me", busy),
    breakfast: await underWay("fog-bell-breakfast", 7),
    lunch: await underWay("slack-water-lunch", 10),
  };
}

/** The same kitchen with the house that knows of its meal, as if that were over. */
function served(kitchen: Kitchen): Kitchen {
  const { session } = kitchen.log;
  if (session === null) throw new Error("no meal is on");
  const made = madeMeal("evening", session, kitchen.now, null);
  const note = { seq: 1, at: kitchen.now, command: "note", happening: { type: "MealNoted", made } } as const;
  const dish = session.meal.dishes[0]?.id;
  if (dish === undefined) throw new Error("a meal without a dish");
  const cooling = { type: "CoolingBegun", session: "evening", dish, name: dish, since: kitchen.now } as const;
  const log = appendHouse(emptyHouseLog, [
    note,
    { seq: 2, at: kitchen.now, command: "cool", happening: cooling },
  ]);
  return { ...kitchen, household: { log, talk: houseTalk, list: noDeviceList } };
}

/** The same kitchen with the list of its meal open. */
async function shoppingFor(kitchen: Kitchen): Promise<Kitchen> {
  const { session } = kitchen.log;
  const [foods, places] = [await loadFoods("recipes"), await loadPlaces("recipes")];
  if (session === null || !foods.ok || !places.ok) throw new Error("no list can be made");
  const meals = [session.meal];
  const list = buyingList({
    meals,
    foods: foods.value,
    places: places.value,
    house: [],
    fridge: fridgeUnknown,
  });
  const wants = ["candles", "nutmeg"].map((name, index) => ({
    seq: index + 1,
    at: kitchen.now,
    command: name,
    happening: { type: "ThingWanted", thing: keyOfThing(name), name } as const,
  }));
  const made = { list: writtenList(list, meals), own: [], ticked: [] };
  const log = appendHouse(emptyHouseLog, wants);
  return { ...kitchen, household: { log, talk: houseTalk, list: { ...noDeviceList, made, isOpen: true } } };
}

/** The kitchen once that was said and done. */
function carriedOut(said: string, kitchen: Kitchen): Kitchen {
  const { orders, dialogue } = respond(said, kitchen);
  const log = orders.reduce((before, order, index) => {
    const command = { id: `said ${index}`, at: kitchen.now, order };
    const decision = decide(command, before);
    if (!decision.ok) throw new Error(decision.error.code);
    return appendEvents(before, numbered(command, before, decision.value));
  }, kitchen.log);
  const sheet = log.session === null ? null : runSheetOf(log.session, kitchen.now);
  return { ...kitchen, log, sheet, dialogue };
}

/** A meal begun at that hour, when its second timer has rung. */
async function underWay(name: string, hour: number): Promise<Kitchen> {
  const found = await findMeal(name);
  if (!found.ok) throw new Error(found.error);
  const stage = new Stage(found.value.meal, atMinute(hour * 60), null, () => undefined);
  const rings = (): number => stage.cues.filter(({ call }) => call.kind === "ring").length;
  cookOn(stage, () => rings() === 2, plus(stage.now, hours(3)));
  return { ...stage.moment(), foods: await foodsAtHand };
}

/** What ships of foods and diets. */
const foodsAtHand: Promise<FoodsAtHand> = MealBook.open("recipes").then(async (shelves) => {
  const book = await shelves.foodBook(ok([]));
  if (!book.ok) throw new Error(book.error);
  return { book: book.value, talk: foodTalk };
});
