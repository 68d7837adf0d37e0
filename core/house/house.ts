import { guidance } from "../keeping/guidance-table.ts";
import type { DishId } from "../recipe/model.ts";
import { instant, plus } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { compare, rational, sub, ZERO } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import type { HouseEvent, HouseHappening, MadeHappening } from "./events.ts";
import { evolveWanted } from "./evolve-wanted.ts";
import type { Leftover, LeftoverId, MadeMeal } from "./leftover.ts";
import type { WantedThings } from "./wanted.ts";

/** A dish that the cook is cooling down. */
export interface Cooling {
  readonly session: string;
  readonly dish: DishId;
  readonly name: string;
  readonly since: Instant;
}

/** What outlives an evening, folded from its log. */
export interface House {
  /** The meal that was cooked last; null: none yet. */
  readonly made: MadeMeal | null;
  /** The dishes of it of which nothing is left. */
  readonly finished: ReadonlySet<DishId>;
  readonly cooling: readonly Cooling[];
  /** Whether the cook wants to hear no more of what stands about after it. */
  readonly isSilenced: boolean;
  /** What is in the fridge and the freezer. */
  readonly leftovers: ReadonlyMap<LeftoverId, Leftover>;
  /** What is to be bought for no meal in particular. */
  readonly wanted: WantedThings;
}

/** The log and what it folds to. */
export interface HouseLog {
  readonly events: readonly HouseEvent[];
  readonly house: House;
}

const emptyHouse: House = {
  made: null,
  finished: new Set(),
  cooling: [],
  isSilenced: false,
  leftovers: new Map(),
  wanted: new Map(),
};

/** Nothing has happened yet. */
export const emptyHouseLog: HouseLog = { events: [], house: emptyHouse };

/**
 * What did happen. Total: never refuses, never throws. Events that the log holds already are passed over, so a
 * snapshot may overlap; a snapshot leaves out what nothing depends on any more, so numbers may be missing.
 */
export function appendHouse(log: HouseLog, events: readonly HouseEvent[]): HouseLog {
  const last = log.events.at(-1)?.seq ?? 0;
  const fresh = events.filter((event) => event.seq > last);
  if (fresh.length === 0) return log;
  const all = [...log.events, ...fresh];
  const isUndone = fresh.some(({ happening }) => happening.type === "Undone");
  return { events: all, house: isUndone ? fold(all) : fresh.reduce(evolve, log.house) };
}

/** The commands that were taken back. */
export const undoneInHouse = (events: readonly HouseEvent[]): ReadonlySet<string> =>
  new Set(events.flatMap(({ happening }) => (happening.type === "Undone" ? [happening.undoes] : [])));

function fold(events: readonly HouseEvent[]): House {
  const undone = undoneInHouse(events);
  return events.filter(({ command }) => !undone.has(command)).reduce(evolve, emptyHouse);
}

/**
 * What a device has to be told to have the same house: all but the notes of meals that later notes have replaced,
 * which are by far the most of a log, and what was said of a meal that another one has made forgotten.
 */
export function worthTelling(events: readonly HouseEvent[]): readonly HouseEvent[] {
  const notes = events.flatMap(({ seq, happening }) =>
    happening.type === "MealNoted" ? [{ seq, session: happening.made.session }] : [],
  );
  const last = notes.at(-1);
  const other = notes.findLast(({ session }) => session !== last?.session)?.seq ?? 0;
  const first = notes.find(({ seq }) => seq > other)?.seq ?? 0;
  return events.filter(({ seq, happening: { type } }) => {
    if (type === "MealNoted") return seq === last?.seq;
    return seq > first || (type !== "DishFinished" && type !== "RemindersSilenced");
  });
}

function evolve(house: House, { happening, at }: HouseEvent): House {
  switch (happening.type) {
    case "LeftoverStored":
    case "LeftoverLessened":
    case "LeftoverHeated":
    case "LeftoverEaten":
    case "LeftoverThrownAway":
      return { ...house, leftovers: evolveLeftovers(house.leftovers, happening, at) };
    case "MealNoted":
    case "DishFinished":
    case "CoolingBegun":
    case "CoolingEnded":
    case "RemindersSilenced":
      return evolveMade(house, happening);
    case "ThingWanted":
    case "ThingDropped":
    case "ThingBought":
    case "ThingNotBought":
    case "BoughtCleared":
      return { ...house, wanted: evolveWanted(house.wanted, happening, at) };
    case "Undone":
      return house;
  }
}

function evolveLeftovers(
  leftovers: House["leftovers"],
  happening: Extract<HouseHappening, { readonly type: `Leftover${string}` }>,
  at: Instant,
): House["leftovers"] {
  const next = new Map(leftovers);
  switch (happening.type) {
    case "LeftoverStored":
      return next.set(happening.leftover.id, { ...happening.leftover, heatedAt: null });
    case "LeftoverLessened": {
      const before = next.get(happening.id);
      return before === undefined ? leftovers : next.set(happening.id, lessened(before, happening.servings));
    }
    case "LeftoverHeated": {
      const before = next.get(happening.id);
      const { some } = happening;
      if (before === undefined) return leftovers;
      if (some === null) return next.set(happening.id, heated(before, at));
      const portion = {
        ...before,
        id: some.as,
        rest: { kind: "servings", servings: some.servings },
      } as const;
      return next.set(happening.id, lessened(before, some.servings)).set(some.as, heated(portion, at));
    }
    case "LeftoverEaten":
    case "LeftoverThrownAway":
      next.delete(happening.id);
      return next;
  }
}

function lessened(leftover: Leftover, by: Rational): Leftover {
  const { rest } = leftover;
  if (rest.kind !== "servings") return leftover;
  return { ...leftover, rest: { kind: "servings", servings: less(rest.servings, by) } };
}

/** What is hot is out of the cold: two hours at most, and no longer than it would have kept in the fridge. */
function heated(leftover: Leftover, at: Instant): Leftover {
  const { value, source } = guidance.outAtMost;
  const until = plus(at, value);
  // The freezer's day is one of taste.
  const useBy = leftover.place === "freezer" ? until : instant(Math.min(leftover.useBy, until));
  return { ...leftover, heatedAt: at, useBy, source };
}

const less = (from: Rational, by: Rational): Rational => {
  const rest = sub(rational(from), rational(by));
  return compare(rest, ZERO) < 0 ? ZERO : rest;
};

/**
 * A note of another meal forgets what was said of the one before, its cooling apart: that goes on. What is said of a
 * meal may come before the only note of it that a device was told.
 */
function evolveMade(house: House, happening: MadeHappening): House {
  switch (happening.type) {
    case "MealNoted": {
      const { made } = happening;
      const isSame = house.made === null || house.made.session === made.session;
      return isSame ? { ...house, made } : { ...house, made, finished: new Set(), isSilenced: false };
    }
    case "DishFinished":
      return isOther(house, happening)
        ? house
        : { ...house, finished: new Set([...house.finished, happening.dish]) };
    case "CoolingBegun": {
      const { type: _, ...cooling } = happening;
      return { ...house, cooling: [...withoutCooling(house, happening), cooling] };
    }
    case "CoolingEnded":
      return { ...house, cooling: withoutCooling(house, happening) };
    case "RemindersSilenced":
      return isOther(house, happening) ? house : { ...house, isSilenced: true };
  }
}

const isOther = ({ made }: House, { session }: { readonly session: string }): boolean =>
  made !== null && made.session !== session;

const withoutCooling = (
  { cooling }: House,
  { session, dish }: Pick<Cooling, "session" | "dish">,
): readonly Cooling[] => cooling.filter((one) => one.session !== session || one.dish !== dish);
