import { decideHouse, lastHouseDeed, madeDish, numberedInHouse } from "../../house/decide.ts";
import { appendHouse } from "../../house/house.ts";
import type { House, HouseLog } from "../../house/house.ts";
import { leftoverId } from "../../house/leftover.ts";
import type { Leftover, MadeDish, Place } from "../../house/leftover.ts";
import type { HouseOrder } from "../../house/orders.ts";
import type { DeviceList } from "../../shop/at-hand.ts";
import { houseSentence } from "../../house/refusal.ts";
import { standingOf, type Standing } from "../../house/standing.ts";
import type { DishId } from "../../recipe/model.ts";
import { compare, ratio, sub } from "../../units/rational.ts";
import type { Rational } from "../../units/rational.ts";
import { readiness } from "../../house/made-meal.ts";
import { isWithin } from "../find.ts";
import type { Intent, Mention } from "../intent.ts";
import type { Household, Kitchen } from "../model.ts";
import { withNumbers } from "../names.ts";
import { asks, commandId, told } from "../outcome.ts";
import type { Outcome } from "../outcome.ts";

/** What a question about the house is answered from. */
export interface Cupboard {
  readonly kitchen: Kitchen;
  readonly log: HouseLog;
  readonly house: House;
  /** The buying list of this device. */
  readonly list: DeviceList;
}

/** What is meant: something in the fridge, or a dish of the last meal that is not put away. */
export type LeftThing =
  | { readonly kind: "leftover"; readonly leftover: Leftover }
  | { readonly kind: "dish"; readonly dish: MadeDish };

/** The cupboard of a household at a moment. */
export const cupboardOf = (kitchen: Kitchen, { log, list }: Household): Cupboard => ({
  kitchen,
  log,
  house: log.house,
  list,
});

const namesOf = (thing: LeftThing): readonly string[] =>
  thing.kind === "leftover" ? [thing.leftover.name] : [thing.dish.name, ...thing.dish.says];

const nameOf = (thing: LeftThing): string =>
  thing.kind === "leftover" ? `${thing.leftover.name} in the ${thing.leftover.place}` : thing.dish.name;

const idOf = (thing: LeftThing): Mention =>
  thing.kind === "leftover"
    ? { by: "leftover", leftover: thing.leftover.id }
    : { by: "dish", dish: thing.dish.dish };

/** Everything that may be meant: what is in the fridge first, the oldest use-by first. */
export function leftThings({ house }: Cupboard): readonly LeftThing[] {
  const leftovers = [...house.leftovers.values()].toSorted((a, b) => a.useBy - b.useBy);
  return [
    ...leftovers.map((leftover): LeftThing => ({ kind: "leftover", leftover })),
    ...(house.made?.dishes ?? []).map((dish): LeftThing => ({ kind: "dish", dish })),
  ];
}

/** A leftover is of a dish: its other names are its own too. */
function allNames(thing: LeftThing, { house }: Cupboard): readonly string[] {
  if (thing.kind === "dish") return namesOf(thing);
  const dish = thing.leftover.of === null ? null : madeDish(house.made, thing.leftover.of.dish);
  return [...namesOf(thing), ...(dish?.says ?? [])];
}

function meant(what: Mention, things: readonly LeftThing[], cupboard: Cupboard): readonly LeftThing[] {
  if (what.by === "leftover")
    return things.filter((one) => one.kind === "leftover" && one.leftover.id === what.leftover);
  if (what.by === "dish") return things.filter((one) => one.kind === "dish" && one.dish.dish === what.dish);
  const said = what.by === "words" ? what.words : "";
  const exact = things.filter((one) => allNames(one, cupboard).flatMap(withNumbers).includes(said));
  return exact.length > 0 ? exact : things.filter((one) => namesOf(one).some((name) => isWithin(said, name)));
}

/**
 * What is put away stands for its dish as well; and of two of one name in one place the one that goes off first is
 * meant, for it is to be used first.
 */
function withoutDoubles(things: readonly LeftThing[]): readonly LeftThing[] {
  const put = things.flatMap((one) => (one.kind === "leftover" ? [one.leftover] : []));
  const isFirst = (leftover: Leftover): boolean =>
    put.find(({ name, place }) => name === leftover.name && place === leftover.place) === leftover;
  return things.filter((one) =>
    one.kind === "leftover"
      ? isFirst(one.leftover)
      : put.every(({ of, name }) => of?.dish !== one.dish.dish || name !== one.dish.name),
  );
}

/**
 * Finds what is meant and goes on with it; or says that there is no such thing, or asks which one.
 * @param fits what the intent can be about at all
 * @param again the intent with what was chosen
 */
export function withThing(
  what: Mention | null,
  cupboard: Cupboard,
  fits: (thing: LeftThing) => boolean,
  again: (what: Mention) => Intent,
  go: (thing: LeftThing) => Outcome,
): Outcome {
  const things = leftThings(cupboard).filter(fits);
  const hits = withoutDoubles(what === null ? things : meant(what, things, cupboard));
  const [only] = hits;
  if (only === undefined) {
    const asked = what?.by === "words" ? what.words : "";
    return told(asked === "" ? "I know of nothing that is left." : `I know of no ${asked} that is left.`);
  }
  if (hits.length === 1) return go(only);
  const candidates = hits.slice(0, 5).map((thing) => ({ name: nameOf(thing), intent: again(idOf(thing)) }));
  const names = candidates.map(({ name }) => name);
  const list = `${names.slice(0, -1).join(", ")} or ${names.at(-1) ?? ""}`;
  return asks({ kind: "which", candidates, prompt: `Which one: ${list}?` });
}

/** Whether it is something that an intent can be about. */
type Fits = (thing: LeftThing) => boolean;

/** What is in the fridge and stands so. */
export const standing =
  ({ kitchen }: Cupboard, ...standings: readonly Standing[]): Fits =>
  (thing) =>
    thing.kind === "leftover" && standings.includes(standingOf(thing.leftover, kitchen.now));

/** The leftovers that words may mean, also where there are several of one name. */
export const leftoversMeant = (what: Mention | null, cupboard: Cupboard): readonly Leftover[] =>
  (what === null ? leftThings(cupboard) : meant(what, leftThings(cupboard), cupboard)).flatMap((thing) =>
    thing.kind === "leftover" ? [thing.leftover] : [],
  );

/** Whether words may mean something of a kind. */
export function isAnyMeant(what: Mention | null, cupboard: Cupboard, fits: Fits): boolean {
  const things = leftThings(cupboard);
  return (what === null ? things : meant(what, things, cupboard)).some(fits);
}

/** The first of some kinds of which something is meant: good soup goes before what was heated of it. Any, where none is. */
export const firstKind = (what: Mention | null, cupboard: Cupboard, kinds: readonly Fits[]): Fits =>
  kinds.find((fits) => isAnyMeant(what, cupboard, fits)) ?? (() => true);

/** Gives orders about the house, tried out first: `say` tells what they bring about, a refusal is said instead. */
export function orderedInHouse(
  { kitchen, log }: Cupboard,
  orders: readonly HouseOrder[],
  say: (house: House) => Outcome,
): Outcome {
  let then = log;
  for (const [index, order] of orders.entries()) {
    const command = { id: `${commandId(kitchen.utteranceId, index)}-house`, at: kitchen.now, order };
    const decision = decideHouse(command, then);
    if (!decision.ok) return told(houseSentence(decision.error));
    then = appendHouse(then, numberedInHouse(command, then, decision.value));
  }
  return { ...say(then.house), house: orders };
}

/** A spoken figure as an exact number: nobody says finer parts than twelfths. */
export const exactly = (figure: number): Rational => ratio(Math.round(figure * 12), 12);

/** When a dish was ready, also while its meal is still on. */
export function readyOf(
  dish: MadeDish,
  { kitchen, house }: Cupboard,
): Pick<MadeDish, "offHeatAt" | "readyAt"> {
  const { session } = kitchen.log;
  if (session === null || house.made === null || house.made.endedAt !== null) return dish;
  return session.begunAt === house.made.begunAt ? readiness(session, dish.dish) : dish;
}

/** The id of what an utterance puts away. */
export const newLeftover = (kitchen: Kitchen): Leftover["id"] => leftoverId(`${kitchen.utteranceId}-left`);

/** What is left of a dish when so much of it was eaten; null: nothing. */
export function restOf(dish: MadeDish, eaten: Rational): Rational | null {
  const rest = sub(ratio(dish.yield.servings), eaten);
  return compare(rest, ratio(0)) > 0 ? rest : null;
}

/** Asks where it is to go. */
export const asksPlace = (dish: DishId, servings: number, before: string): Outcome => {
  const intent = (place: Place): Intent => ({ type: "PutAway", what: { by: "dish", dish }, servings, place });
  return asks(
    {
      kind: "which",
      candidates: [
        { name: "the fridge", intent: intent("fridge") },
        { name: "the freezer", intent: intent("freezer") },
      ],
      prompt: "Into the fridge or the freezer?",
    },
    before,
  );
};

/** Whether the last thing that the cook did was done in the house, or to its buying list: "undo that" means it then. */
export function isLastDeed(kitchen: Kitchen, log: HouseLog, lastInMeal: number): boolean {
  const deed = lastHouseDeed(log, kitchen.now);
  const tick = kitchen.household?.list.lastTick ?? null;
  return (deed !== null && deed.at > lastInMeal) || (tick !== null && tick.at > lastInMeal);
}
