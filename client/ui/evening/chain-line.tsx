import type { Instant } from "../../../core/units/quantity.ts";
import type { LaneBar, Evening } from "./evening-layout.ts";
import { stripOf } from "./picture-size.ts";
import type { AcrossOf, LaneBox, PictureSize } from "./picture-size.ts";

interface ChainLineProps {
  readonly evening: Evening;
  readonly boxes: readonly LaneBox[];
  readonly x: AcrossOf;
  readonly size: PictureSize;
}

/** The place of a bar's strip. */
interface Spot {
  readonly bar: LaneBar;
  readonly y: number;
}

/** One line from step to step of those that dinner waits for, to the moment when it is ready. */
export function ChainLine({ evening, boxes, x, size }: ChainLineProps) {
  const strip = stripOf(size.rowHeight);
  const spots = boxes.flatMap(({ lane, top, heat }) =>
    lane.bars
      .filter(({ awaitedTo }) => awaitedTo !== null)
      .map((bar): Spot => ({ bar, y: top + heat + (bar.row + 1) * size.rowHeight - 1 - strip / 2 })),
  );
  const path = pathOf(evening, spots, x);
  if (path === null) return null;
  const end = spots.findLast(({ bar }) => bar.task === evening.chain.at(-1));
  return (
    <g class="chain" aria-hidden="true">
      <path d={path} stroke-width={Math.max(2, strip * 0.45)} />
      {end !== undefined && <circle cx={x(evening.readyAt)} cy={end.y} r={strip * 0.9} />}
    </g>
  );
}

function pathOf(evening: Evening, spots: readonly Spot[], x: AcrossOf): string | null {
  const parts: string[] = [];
  let at: { readonly moment: Instant; readonly y: number } | null = null;
  for (const task of evening.chain) {
    const own = spots.filter(({ bar }) => bar.task === task);
    const from = at?.y ?? 0;
    const [next] = own.toSorted((a, b) => Math.abs(a.y - from) - Math.abs(b.y - from));
    if (next === undefined) continue;
    if (at !== null) parts.push(`M${x(at.moment)} ${at.y}H${x(next.bar.from) + 1}V${next.y}`);
    // A step that wants both hands and a burner has a bar on either: the line ties them.
    const [low, high] = [Math.min(...own.map(({ y }) => y)), Math.max(...own.map(({ y }) => y))];
    if (own.length > 1) parts.push(`M${x(next.bar.from) + 1} ${low}V${high}`);
    at = { moment: next.bar.awaitedTo ?? next.bar.to, y: next.y };
  }
  if (at === null) return null;
  return [...parts, `M${x(at.moment)} ${at.y}H${x(evening.readyAt)}`].join("");
}
