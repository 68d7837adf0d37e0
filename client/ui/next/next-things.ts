import type { Call } from "../../../core/cook/calls.ts";
import { upcoming } from "../../../core/cook/next-call.ts";
import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { DishId } from "../../../core/recipe/model.ts";
import { formatDuration } from "../../../core/units/duration.ts";
import { between, minutes } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { formatHeat } from "../../../core/units/temperature.ts";

/** One of the next things: what, of which dish, and in how long. */
export interface NextThing {
  readonly key: string;
  readonly title: string;
  readonly dish: DishId | null;
  /** "in 6 min", "now", "then" where it follows what is in hand. */
  readonly when: string;
}

/** How many can be kept in mind at a glance. */
const most = 3;

/** The next three things for the cook after what is called now. */
export function nextThings(
  session: Session,
  sheet: RunSheet,
  now: Instant,
  calls: readonly Call[],
): readonly NextThing[] {
  const onPlate = calls.flatMap((call) => ("task" in call ? [call.task.id] : []));
  const steps = upcoming(session, sheet)
    .filter(({ task }) => !onPlate.includes(task.id))
    .map(({ task, entry }) => ({
      at: entry.start,
      key: `step ${task.id}`,
      dish: task.dish.id,
      title: task.step.title,
    }));
  const moves = sheet.ovenMoves
    .filter((move) => move.at > now && !calls.some((call) => isCallFor(move, call)))
    .map((move) => ({
      at: move.at,
      key: `${move.oven} ${move.at}`,
      dish: null,
      title: `${move.oven} to ${formatHeat(move.heat)}`,
    }));
  return [...steps, ...moves]
    .toSorted((a, b) => a.at - b.at)
    .slice(0, most)
    .map(({ at, key, title, dish }) => ({ key, title, dish, when: inMinutesWords(at, now) }));
}

/** The oven is called ahead of its time where the cook's hands will not be free later. */
const isCallFor = ({ oven, heat }: RunSheet["ovenMoves"][number], call: Call): boolean =>
  call.kind === "heat" && call.oven === oven && formatHeat(call.heat) === formatHeat(heat);

function inMinutesWords(at: Instant, now: Instant): string {
  const count = Math.round(between(now, at) / 60);
  if (count <= 0) return "then";
  const length = minutes(count);
  return `in ${formatDuration({ low: length, high: length })}`;
}
