import type { Session } from "../../../core/cook/session.ts";
import type { RunSheet } from "../../../core/plan/model.ts";
import { earlier, later, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { formatHeat, toFahrenheit } from "../../../core/units/temperature.ts";
import type { Heat } from "../../../core/units/temperature.ts";

/** A point of an oven's heat: how hot it is then, as a share of its hottest. */
export interface HeatPoint {
  readonly at: Instant;
  readonly share: number;
}

/** How the heat of one oven goes through the evening. */
export interface HeatCurve {
  readonly points: readonly HeatPoint[];
  /** Where a heat is reached, and which. */
  readonly labels: readonly { readonly at: Instant; readonly text: string; readonly share: number }[];
}

/** A cold oven stands at this share, so that its line can be seen. */
const cold = 0.06;

/** The heat of an oven from the beginning to the end of the picture: what it was set to, then what it is to be. */
export function heatCurve(
  oven: string,
  session: Session,
  sheet: RunSheet,
  from: Instant,
  to: Instant,
): HeatCurve {
  const place = session.meal.kitchen.ovens.find((one) => one.name === oven);
  const hottest = place === undefined ? 500 : toFahrenheit(place.hottest);
  const share = (heat: Heat | null): number =>
    heat === null ? cold : Math.max(cold, toFahrenheit(heat) / hottest);
  const set = session.ovens.find((one) => one.oven === oven);
  const heatNow = set?.heat ?? null;
  const setAt = later(from, set?.setAt ?? from);
  const points: HeatPoint[] = [{ at: from, share: cold }];
  const labels: HeatCurve["labels"][number][] = [];
  let current = cold;
  const go = (at: Instant, readyAt: Instant, heat: Heat): void => {
    points.push({ at, share: current }, { at: later(at, readyAt), share: share(heat) });
    labels.push({ at: later(at, readyAt), text: formatHeat(heat), share: share(heat) });
    current = share(heat);
  };
  if (heatNow !== null) go(setAt, heatedAt(setAt, share(heatNow) * hottest, place?.heats ?? 20), heatNow);
  for (const move of sheet.ovenMoves.filter((one) => one.oven === oven))
    go(later(move.at, setAt), move.readyAt, move.heat);
  points.push({ at: to, share: current });
  return { points: points.map((point) => ({ ...point, at: earlier(point.at, to) })), labels };
}

/** A cold oven takes about this long to its heat. @param rate Fahrenheit degrees a minute */
const heatedAt = (at: Instant, degreesF: number, rate: number): Instant =>
  plus(at, minutes(Math.max(0, degreesF - roomF) / rate));

const roomF = 70;
