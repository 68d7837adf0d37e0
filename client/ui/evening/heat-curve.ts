import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import type { Oven } from "../../../core/recipe/model.ts";
import { earlier, later, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { formatHeat, toFahrenheit } from "../../../core/units/temperature.ts";
import type { Heat } from "../../../core/units/temperature.ts";

/** A point of an oven's heat: how hot it is then, as a share of its hottest. */
export interface HeatPoint {
  readonly at: Instant;
  readonly share: number;
}

/** One turn of the oven: what has been done, or what the run sheet asks for. */
export interface HeatTurn {
  readonly at: Instant;
  /** "390°F", "off". */
  readonly text: string;
  /** When it has come to that heat; the end of the stretch where it never does. */
  readonly reachedAt: Instant;
  /** When the next turn comes, or the evening ends. */
  readonly until: Instant;
  readonly share: number;
}

/** How the heat of one oven goes through the evening. */
export interface HeatCurve {
  readonly points: readonly HeatPoint[];
  readonly turns: readonly HeatTurn[];
}

const roomF = 70;
/** A cold oven stands at this share, so that its line can be seen. */
const cold = 0.06;

interface Turn {
  readonly at: Instant;
  readonly heat: Heat | null;
  /** As the run sheet has it; null for what was done: then the oven's own pace says when. */
  readonly readyAt: Instant | null;
}

function turnsOf(oven: Oven, session: Session, sheet: RunSheet): readonly Turn[] {
  const done = session.ovenTurns
    .filter((turn) => turn.oven === oven.name)
    .map(({ at, heat }) => ({ at, heat, readyAt: null }));
  const last = done.at(-1)?.at;
  const ahead = sheet.ovenMoves
    .filter((move) => move.oven === oven.name)
    .map(({ at, heat, readyAt }) => ({ at: last === undefined ? at : later(at, last), heat, readyAt }));
  return [...done, ...ahead];
}

/** The heat of an oven over a stretch of the evening: what it was set to, then what it is to be. */
export function heatCurve(
  oven: Oven,
  session: Session,
  sheet: RunSheet,
  from: Instant,
  to: Instant,
): HeatCurve {
  const hottest = toFahrenheit(oven.hottest);
  const shareOf = (degreesF: number): number =>
    degreesF <= roomF ? cold : Math.max(cold, degreesF / hottest);
  const all = turnsOf(oven, session, sheet);
  const points: HeatPoint[] = [{ at: earlier(from, all[0]?.at ?? from), share: cold }];
  const turns: HeatTurn[] = [];
  let degrees = roomF;
  for (const [index, { at, heat, readyAt }] of all.entries()) {
    const until = later(at, all[index + 1]?.at ?? to);
    const target = heat === null ? roomF : toFahrenheit(heat);
    const pace = target > degrees ? oven.heats : oven.cools;
    const ready = readyAt ?? plus(at, minutes(Math.abs(target - degrees) / pace));
    const reachedAt = earlier(later(ready, at), until);
    points.push({ at, share: shareOf(degrees) });
    degrees += (target - degrees) * (ready <= at ? 1 : (reachedAt - at) / (ready - at));
    points.push({ at: reachedAt, share: shareOf(degrees) });
    const text = heat === null ? "off" : formatHeat(heat);
    turns.push({ at, text, reachedAt, until, share: shareOf(degrees) });
  }
  points.push({ at: to, share: shareOf(degrees) });
  return {
    points: cutTo(points, from, to),
    turns: turns.filter((turn) => turn.until > from && turn.at < to),
  };
}

/** The part of a line between two moments, with a point at either end. */
function cutTo(points: readonly HeatPoint[], from: Instant, to: Instant): readonly HeatPoint[] {
  const shareAt = (at: Instant): number => {
    const next = points.findIndex((point) => point.at >= at);
    const [one, other] = [points[next - 1], points[next]];
    if (other === undefined) return points.at(-1)?.share ?? cold;
    if (one === undefined || other.at === one.at) return other.share;
    return one.share + ((other.share - one.share) * (at - one.at)) / (other.at - one.at);
  };
  const inside = points.filter(({ at }) => at > from && at < to);
  return [{ at: from, share: shareAt(from) }, ...inside, { at: to, share: shareAt(to) }];
}
