import type { MealEvent, PaceHappening } from "../cook/events.ts";
import { isOfPace, undoneCommands } from "../cook/fold.ts";
import type { Task } from "../plan/model.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import { instant } from "../units/quantity.ts";
import { learntTimes } from "./estimate.ts";
import type { KnownPace, Pace, PaceWish, WorkKind } from "./pace.ts";
import { atPace, stepKeys, workKinds } from "./pace.ts";
import type { Spell } from "./spells.ts";
import { spellsOf } from "./spells.ts";
import { workKind } from "./work-kind.ts";

/** All that one evening's log tells of the cook's pace. */
export interface EveningRecord {
  readonly begunAt: Instant;
  readonly spells: readonly Spell[];
  /** What was known, set and forgotten, in order. */
  readonly turns: readonly { readonly at: Instant; readonly happening: PaceHappening }[];
}

/** Meals begun within this time are one evening: a meal that was ended and begun again teaches nothing twice. */
const oneEveningMs = 6 * 3_600_000;

/** Reads one evening's log; an empty one tells nothing. */
export function readEvening(events: readonly MealEvent[]): EveningRecord {
  const undone = undoneCommands(events);
  return {
    begunAt: events[0]?.at ?? instant(0),
    spells: spellsOf(events),
    turns: events.flatMap(({ at, command, happening }) =>
      isOfPace(happening) && !undone.has(command) ? [{ at, happening }] : [],
    ),
  };
}

/** What the cook wants of each kind of work, and since when anything counts. */
interface Wanted {
  readonly wishes: ReadonlyMap<WorkKind, PaceWish>;
  readonly since: number;
}

function wantedOf(records: readonly EveningRecord[], forgottenAt: Instant | null): Wanted {
  const turns = records.flatMap((record) => record.turns).toSorted((a, b) => a.at - b.at);
  let wanted: Wanted = { wishes: new Map(), since: forgottenAt ?? -Infinity };
  for (const { at, happening } of turns) {
    if (at <= (forgottenAt ?? -Infinity)) continue;
    const wishes = new Map(wanted.wishes);
    if (happening.type === "PaceForgotten") {
      wanted = { wishes: new Map(), since: at };
      continue;
    }
    if (happening.type === "PaceSet") {
      if (happening.wish === null) wishes.delete(happening.kind);
      else wishes.set(happening.kind, happening.wish);
    } else {
      // An evening begins with what was wanted then, so older logs need not be read for it.
      wishes.clear();
      for (const { kind, wish } of happening.paces) if (wish !== null) wishes.set(kind, wish);
    }
    wanted = { ...wanted, wishes };
  }
  return wanted;
}

/** The records that belong to each evening. */
function evenings(records: readonly EveningRecord[]): readonly (readonly EveningRecord[])[] {
  const groups: EveningRecord[][] = [];
  for (const record of records.toSorted((a, b) => a.begunAt - b.begunAt)) {
    const group = groups.at(-1);
    const first = group?.[0];
    if (group === undefined || first === undefined || record.begunAt - first.begunAt >= oneEveningMs)
      groups.push([record]);
    else group.push(record);
  }
  return groups;
}

/**
 * How this cook takes each kind of work, from the logs of past evenings, in whatever order.
 * @param forgottenAt what happened until then does not count; null: all does
 */
export function knownPaces(
  records: readonly EveningRecord[],
  forgottenAt: Instant | null,
): readonly KnownPace[] {
  const { wishes, since } = wantedOf(records, forgottenAt);
  const groups = evenings(records);
  return workKinds.map((kind): KnownPace => {
    const ratios = groups
      .map((group) =>
        group.flatMap(({ spells }) =>
          spells.filter((spell) => spell.kind === kind && spell.at > since).map(({ ratio }) => ratio),
        ),
      )
      .filter((some) => some.length > 0);
    const steps = ratios.reduce((sum, some) => sum + some.length, 0);
    return {
      kind,
      times: learntTimes(ratios),
      steps,
      evenings: ratios.length,
      wish: wishes.get(kind) ?? null,
    };
  });
}

/** The known paces with the steps of a meal that each of them is for. */
export const pacesFor = (meal: CookingMeal, known: readonly KnownPace[]): readonly Pace[] =>
  known.map((pace) => ({ ...pace, of: stepKeys(meal, (step) => workKind(step) === pace.kind) }));

/** How this cook takes the work of a meal; none: as the recipes say. */
export type PacesOf = (meal: CookingMeal) => readonly Pace[];

/** The tasks of a meal, in whatever ways, as this cook takes them. */
export const tasksAtPace =
  (pacesOf: PacesOf) =>
  (meal: CookingMeal): readonly Task[] =>
    atPace(expandTasks(meal), pacesOf(meal));
