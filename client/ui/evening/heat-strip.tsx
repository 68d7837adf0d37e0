import type { Instant } from "../../../core/units/quantity.ts";
import type { HeatCurve, HeatTurn } from "./heat-curve.ts";
import { widthOf } from "./picture-size.ts";
import type { AcrossOf } from "./picture-size.ts";

interface HeatStripProps {
  readonly curve: HeatCurve;
  readonly top: number;
  readonly height: number;
  readonly x: AcrossOf;
  readonly text: number;
  readonly clock: (at: Instant) => string;
}

/** A lower strip has no room for when the oven is turned. */
const leastForTurns = 20;

/** The heat of an oven over its bars. */
export function HeatStrip({ curve, top, height, x }: Omit<HeatStripProps, "text" | "clock">) {
  const y = (share: number): number => top + height - share * (height - 2);
  const line = curve.points.map(({ at, share }) => `${x(at)},${y(share)}`).join(" ");
  const [first, last] = [curve.points[0], curve.points.at(-1)];
  if (first === undefined || last === undefined) return null;
  return (
    <g class="heat">
      <polygon points={`${x(first.at)},${top + height} ${line} ${x(last.at)},${top + height}`} />
      <polyline points={line} />
    </g>
  );
}

/** Each heat in degrees where the oven has come to it, and where there is room when it is turned. */
export function HeatFigures({ curve, top, height, x, text, clock }: HeatStripProps) {
  const [first, last] = [curve.points[0], curve.points.at(-1)];
  if (first === undefined || last === undefined) return null;
  const [left, right] = [x(first.at), x(last.at)];
  const letters = Math.min(text, height - 3);
  return (
    <g class="heat-figures" aria-hidden="true">
      {height >= leastForTurns &&
        curve.turns.map(({ at }, index) => {
          const words = `set ${clock(at)}`;
          const before = curve.turns[index - 1];
          const room = x(at) - (before === undefined ? left : x(before.reachedAt) + height * 2);
          return room < widthOf(words, letters) + 12 ? null : (
            <text key={at} class="heat-turn" x={x(at) - 6} y={top + height - 6} text-anchor="end">
              {words}
            </text>
          );
        })}
      {curve.turns.map((turn) => (
        <text
          key={turn.at}
          x={placeOf(turn, x, left, right, widthOf(turn.text, letters))}
          y={top + height - 3}
          font-size={letters}
        >
          {turn.text}
        </text>
      ))}
    </g>
  );
}

/** Where it is hot; before that where the plateau is too short for the figure, so that none is left out. */
function placeOf(turn: HeatTurn, x: AcrossOf, left: number, right: number, width: number): number {
  const hot = Math.max(left, x(turn.reachedAt)) + 4;
  const room = Math.min(right, x(turn.until)) - hot;
  return room >= width ? hot : Math.max(left + 2, Math.min(right, x(turn.until)) - width - 2);
}
