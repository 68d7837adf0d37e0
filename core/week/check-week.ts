import { checkMeal, type MealCheck } from "../diet/check.ts";
import type { EatenMeal } from "../diet/eaten.ts";
import { strictest, type Verdict } from "../diet/findings.ts";
import type { Larder } from "../diet/groups.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { nothingAtStart, type AtStart } from "./at-start.ts";
import { leftOf, take, type Left } from "./left.ts";
import { DAY_NAMES, type DayName } from "./week-file.ts";
import type { Sitting, Week } from "./week.ts";
import { capital } from "../units/capital.ts";

/** One time of eating, checked. */
export interface SittingCheck {
  /** "Welcome Supper", "what is left of Lentil Soup". */
  readonly name: string;
  readonly check: MealCheck | null;
  /** What is wrong with eating what is left, a sentence each. */
  readonly troubles: readonly string[];
}

/** What the diets and the fridge say of a week. */
export interface WeekCheck {
  readonly week: Week;
  readonly days: readonly { readonly day: DayName; readonly sittings: readonly SittingCheck[] }[];
  readonly verdict: Verdict;
  /** What is left at the end and in no meal, a sentence each. It breaks nothing. */
  readonly unused: readonly string[];
  /** What was in the fridge as the week began and counts for no meal, or must not be eaten, a sentence each. */
  readonly fridge: readonly string[];
}

/** What is known while the week goes on. */
interface SoFar {
  readonly left: readonly Left[];
  /** By the day it was eaten on, counted from 0; those of the log lie before 0. */
  readonly eaten: readonly { readonly day: number; readonly dishes: EatenMeal["dishes"] }[];
  readonly checks: readonly SittingCheck[];
}

interface Known {
  readonly week: Week;
  readonly larder: Larder;
}

const servingWords = (count: number): string => (count === 1 ? "one serving" : `${count} servings`);

const eatenBy = (day: number, { eaten }: SoFar): readonly EatenMeal[] =>
  eaten.map((one) => ({ daysAgo: day - one.day, dishes: one.dishes }));

function afterCooked(
  day: number,
  { meal, diets }: Extract<Sitting, { kind: "cooked" }>,
  soFar: SoFar,
  { week, larder }: Known,
): SoFar {
  const short = meal.dishes.filter((dish) => dish.yield.servings < week.eaters);
  const troubles = short.map(
    (dish) => `${dish.name} makes ${servingWords(dish.yield.servings)}, and ${week.eaters} eat.`,
  );
  return {
    left: [...soFar.left, ...leftOf(meal, diets, day, week.eaters, larder.foods)],
    eaten: [...soFar.eaten, { day, dishes: meal.dishes }],
    checks: [
      ...soFar.checks,
      { name: meal.name, check: checkMeal(meal, diets, larder, eatenBy(day, soFar)), troubles },
    ],
  };
}

/** The name of a day that is so many after the first, as in a sentence. */
function dayOf(number: number, { days }: Week): string {
  const first = DAY_NAMES.indexOf(days[0]?.day ?? "monday");
  return capital(DAY_NAMES[(first + number) % DAY_NAMES.length] ?? "monday");
}

function staleWords({ dish: { name }, from, lastDay, source }: Left, day: number, week: Week): string {
  const mend = `freeze it, or eat it before ${dayOf(day, week)}`;
  if (from.kind === "week")
    return `${name} of ${dayOf(from.day, week)} keeps ${from.keeps === 1 ? "a day" : `${from.keeps} days`} in the fridge (${source}); ${mend}.`;
  return lastDay < 0
    ? `${name} in the fridge is past its day: throw it away, and cook more of it before ${dayOf(day, week)}.`
    : `${name} that is in the fridge now is good until ${dayOf(lastDay, week)} (${source}); ${mend}.`;
}

/** What is wrong with eating so much of a dish on a day. */
function troublesOf(
  day: number,
  dish: string,
  wanted: number,
  taking: ReturnType<typeof take>,
  week: Week,
): readonly string[] {
  const { got, old, from } = taking;
  if (got >= wanted) return [];
  const name = from?.dish.name ?? dish.replaceAll("-", " ");
  const stale = old.map((one) => staleWords(one, day, week));
  if (stale.length > 0) return stale;
  if (got === 0) return [`Nothing is left of ${name} on ${dayOf(day, week)}; cook more of it before.`];
  return [`Of ${name} ${servingWords(got)} ${got === 1 ? "is" : "are"} left, and ${wanted} are wanted.`];
}

function afterLeftover(
  day: number,
  sitting: Extract<Sitting, { kind: "leftover" }>,
  soFar: SoFar,
  { week, larder }: Known,
): SoFar {
  const wanted = sitting.servings ?? week.eaters;
  const taking = take(soFar.left, sitting.dish, wanted, day);
  const { from } = taking;
  const troubles = troublesOf(day, sitting.dish, wanted, taking, week);
  const meal: CookingMeal | null =
    from === null ? null : { ...from.meal, name: `what is left of ${from.dish.name}`, dishes: [from.dish] };
  const diets = from?.diets ?? [];
  return {
    left: taking.left,
    eaten: from === null ? soFar.eaten : [...soFar.eaten, { day, dishes: [from.dish] }],
    checks: [
      ...soFar.checks,
      {
        name: meal?.name ?? `what is left of ${sitting.dish.replaceAll("-", " ")}`,
        check: meal === null ? null : checkMeal(meal, diets, larder, eatenBy(day, soFar)),
        troubles,
      },
    ],
  };
}

/** Frozen it can wait, and what is past its day was told already. */
const isToTell = ({ servings, from, lastDay }: Left): boolean =>
  servings > 0 && from.kind !== "freezer" && lastDay >= 0;

const unusedWords = ({ dish, from, servings, lastDay, source }: Left, week: Week): string => {
  const before = from.kind === "week" ? dayOf(from.day, week) : "the fridge";
  return `${servingWords(servings)} of ${dish.name} from ${before} ${servings === 1 ? "is" : "are"} in no meal: eat by ${dayOf(lastDay, week)} or freeze (${source}).`;
};

/**
 * Holds a week against the diets and the fridge, day by day: each meal with all that was eaten before it, what is left
 * with how long it keeps. It proposes nothing.
 * @param eaten the meals of the log up to the first day
 * @param atStart what is in the fridge on the first day
 */
export function checkWeek(
  week: Week,
  larder: Larder,
  eaten: readonly EatenMeal[],
  atStart: AtStart = nothingAtStart,
): WeekCheck {
  let soFar: SoFar = {
    left: atStart.left,
    eaten: eaten.map(({ daysAgo, dishes }) => ({ day: -daysAgo, dishes })),
    checks: [],
  };
  const known = { week, larder };
  const days = week.days.map(({ day, number, sittings }) => {
    soFar = { ...soFar, checks: [] };
    for (const sitting of sittings) {
      soFar =
        sitting.kind === "cooked"
          ? afterCooked(number, sitting, soFar, known)
          : afterLeftover(number, sitting, soFar, known);
    }
    return { day, sittings: soFar.checks };
  });
  const all = days.flatMap(({ sittings }) => sittings);
  const troubled = all.some(({ troubles }) => troubles.length > 0);
  return {
    week,
    days,
    verdict: strictest([
      ...all.flatMap(({ check }) => check?.verdict ?? []),
      ...(troubled ? (["not allowed"] as const) : []),
    ]),
    unused: soFar.left.filter(isToTell).map((one) => unusedWords(one, week)),
    fridge: atStart.notes,
  };
}
