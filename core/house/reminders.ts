import { listed } from "../cook/say-call.ts";
import type { Session } from "../cook/session.ts";
import { guidance } from "../keeping/guidance-table.ts";
import { hazardKinds, hazardWords } from "../keeping/hazards-table.ts";
import type { SourceId } from "../keeping/sources-table.ts";
import { numberWords } from "../units/number-words.ts";
import { between, minus, minutes, plus, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { spokenHeat } from "../units/temperature.ts";
import type { Cooling, House } from "./house.ts";
import type { Leftover, MadeDish, MadeMeal } from "./leftover.ts";
import { readiness } from "./made-meal.ts";

/**
 * Something about what was cooked that is said unasked, once, from `dueAt` on and before `until`; later it would be no
 * use, or the reminder after it says it better. It follows from the logs and the clock alone, so a restart loses none.
 */
export interface Reminder {
  readonly key: string;
  readonly dueAt: Instant;
  readonly until: Instant;
  /** What to say, in one breath. */
  readonly say: string;
  readonly source: SourceId;
}

/** Dishes that were ready within so long of each other are named together. */
const together = minutes(20);
/** So long before two hours are over it is said first, and said again. */
const firstLeft = minutes(30);
const againLeft = minutes(10);
/** A hot dish that waits for so long for the others is asked after. */
const waitsHot = minutes(30);
/** So long before a mark of cooling it is said, and so long after it has passed it is still worth saying. */
const beforeMark = minutes(15);
const afterMark = minutes(30);
/** So long after the beginning of a meal what can hurt in it is still news. */
const atBeginning = minutes(5);

const degrees = (heat: number): string => spokenHeat({ degrees: heat, scale: "F" });

/** What a dish is called in mid-sentence. */
const short = ({ name, says }: Pick<MadeDish, "name" | "says">): string =>
  `the ${(says.find((said) => said !== name) ?? name).toLowerCase()}`;

/**
 * What has to be said at `now` of the food of the last meal.
 * @param session the meal that is on, which knows better than its note which dishes are ready; null: none is
 */
export function remindersAt(house: House, session: Session | null, now: Instant): readonly Reminder[] {
  const all = [
    ...(session === null || session.phase.state === "ended" ? [] : hazardReminders(session)),
    ...(house.isSilenced ? [] : [...standingOut(house, session), ...waitingHot(house, session)]),
    ...house.cooling.flatMap(coolingReminders),
    ...[...house.leftovers.values()].flatMap(heatedReminder),
  ];
  return all.filter(({ dueAt, until }) => dueAt <= now && now < until).toSorted((a, b) => a.dueAt - b.dueAt);
}

/** What can hurt in the dishes, once for all of them: those cautions that the recipes lack. */
function hazardReminders({ meal, begunAt }: Session): readonly Reminder[] {
  const told = meal.dishes.flatMap(({ cautions }) => cautions);
  return hazardKinds.flatMap((kind): readonly Reminder[] => {
    const { caution, source } = hazardWords[kind];
    if (!told.some((one) => one.startsWith(caution))) return [];
    const key = `hazard ${kind} ${begunAt}`;
    return [{ key, dueAt: begunAt, until: plus(begunAt, atBeginning), say: caution, source }];
  });
}

/** A dish that is ready, and since when. */
interface Ready {
  readonly dish: MadeDish;
  readonly at: Instant;
}

const isOn = (made: MadeMeal, session: Session | null): session is Session =>
  made.endedAt === null && session !== null && session.begunAt === made.begunAt;

function readyDishes({ made }: House, session: Session | null): readonly Ready[] {
  if (made === null) return [];
  const ready = made.dishes.flatMap((dish): readonly Ready[] => {
    const { readyAt } = isOn(made, session) ? readiness(session, dish.dish) : dish;
    return readyAt === null ? [] : [{ dish, at: readyAt }];
  });
  return ready.toSorted((a, b) => a.at - b.at);
}

/** Whether nobody has said yet what became of a dish. */
function isOpen({ made, finished, leftovers, cooling }: House, { dish }: MadeDish): boolean {
  const isOfIt = (of: { readonly session: string; readonly dish: string } | null): boolean =>
    of?.dish === dish && of.session === made?.session;
  return (
    !finished.has(dish) && ![...leftovers.values()].some(({ of }) => isOfIt(of)) && !cooling.some(isOfIt)
  );
}

function groups(ready: readonly Ready[]): readonly (readonly [Ready, ...(readonly Ready[])])[] {
  return ready.reduce<readonly (readonly [Ready, ...(readonly Ready[])])[]>((all, one) => {
    const last = all.at(-1);
    return last !== undefined && between(last[0].at, one.at) <= together
      ? [...all.slice(0, -1), [...last, one]]
      : [...all, [one]];
  }, []);
}

/** More names than three are too many for a breath: the first to go off, and how many more. */
function inShort(names: readonly string[]): string {
  const more = names.length - 2;
  return more < 2 ? listed(names) : `${names.slice(0, 2).join(", ")} and ${numberWords(more)} more`;
}

/** Two hours at most on the table: said with half an hour left, and once more with ten minutes. */
function standingOut(house: House, session: Session | null): readonly Reminder[] {
  return groups(readyDishes(house, session)).flatMap((group): readonly Reminder[] => {
    const open = group.filter(({ dish }) => isOpen(house, dish));
    const [{ at }] = group;
    if (open.length === 0) return [];
    const limit = plus(at, guidance.outAtMost.value);
    const [first, again] = [minus(limit, firstLeft), minus(limit, againLeft)];
    const names = inShort(open.map(({ dish }) => short(dish)));
    const key = `out ${house.made?.session ?? ""} ${at}`;
    const { source } = guidance.outAtMost;
    return [
      {
        key,
        dueAt: first,
        until: again,
        say: `Half an hour left of two out: cool ${names}. In a kitchen above ninety degrees, one hour.`,
        source,
      },
      {
        key: `${key} again`,
        dueAt: again,
        until: limit,
        say: `Ten minutes left: put ${names} in the fridge, or say what became of it.`,
        source,
      },
    ];
  });
}

/** Hot dishes that wait for the rest of the meal: kept hot, or else their two hours run. */
function waitingHot(house: House, session: Session | null): readonly Reminder[] {
  const { made } = house;
  if (made === null || !isOn(made, session)) return [];
  const ready = readyDishes(house, session);
  if (ready.length === made.dishes.length) return [];
  return ready
    .filter(({ dish }) => dish.isHot && isOpen(house, dish))
    .map(({ dish, at }): Reminder => {
      const name = short(dish);
      const hot = degrees(guidance.holdHot.value);
      return {
        key: `waits ${made.session} ${dish.dish} ${at}`,
        dueAt: plus(at, waitsHot),
        until: plus(at, seconds(2 * waitsHot)),
        say: `Half an hour that ${name} waits: keep it at ${hot} or hotter. Below that, its two hours count.`,
        source: guidance.holdHot.source,
      };
    });
}

/** What was heated is eaten within two hours; nobody has said that it was. */
function heatedReminder({ id, name, heatedAt }: Leftover): readonly Reminder[] {
  if (heatedAt === null) return [];
  const { value, source } = guidance.outAtMost;
  const dueAt = plus(heatedAt, value);
  const say = `The ${name.toLowerCase()} was heated two hours ago; what is left of it goes.`;
  return [{ key: `heated ${id} ${heatedAt}`, dueAt, until: plus(dueAt, afterMark), say, source }];
}

/** Both marks of cooling: told before each is reached, and once more when it is. */
function coolingReminders({ session, dish, name, since }: Cooling): readonly Reminder[] {
  const marks = [
    {
      figure: guidance.coolFirst,
      hours: "two",
      then: `heat it to ${degrees(guidance.reheatTo.value)} and cool it anew, or `,
    },
    { figure: guidance.coolInAll, hours: "six", then: "" },
  ] as const;
  return marks.flatMap(({ figure, hours, then }): readonly Reminder[] => {
    const { heat, within } = figure.value;
    const at = plus(since, within);
    const key = `cooling ${session} ${dish} ${since} ${heat}`;
    const what = name.toLowerCase();
    return [
      {
        key,
        dueAt: minus(at, beforeMark),
        until: at,
        say: `Measure ${what}: at most ${degrees(heat)} in fifteen minutes, ${hours} hours after the heat.`,
        source: figure.source,
      },
      {
        key: `${key} over`,
        dueAt: at,
        until: plus(at, afterMark),
        say: `${hours === "two" ? "Two" : "Six"} hours since the heat: ${what}. Above ${degrees(heat)}, ${then}throw it away.`,
        source: figure.source,
      },
    ];
  });
}
