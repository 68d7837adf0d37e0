import type { TaskId } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { Evening, Lane } from "./evening-layout.ts";
import { roundTimes } from "./evening-layout.ts";
import type { HeatCurve } from "./heat-curve.ts";
import { LaneBarShape } from "./lane-bar.tsx";

/** How large everything is, in CSS pixels. */
export interface PictureSize {
  readonly width: number;
  readonly rowHeight: number;
  readonly gutter: number;
  readonly axis: number;
}

interface LanePictureProps {
  readonly evening: Evening;
  readonly heats: ReadonlyMap<string, HeatCurve>;
  readonly size: PictureSize;
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
  /** Which bar is picked; only where bars can be. */
  readonly picked?: TaskId | null;
  /** With it every bar is a button; without it the picture is one image. */
  readonly onPick?: (task: TaskId) => void;
}

/** A label of the time axis wants this much room. */
const labelWidth = 84;
const laneGap = 3;

/** Lanes from the first step to the table; the line of now runs through all of them. */
export function LanePicture(props: LanePictureProps) {
  const { evening, heats, size, clockOf, utcOffsetMinutes, picked = null, onPick } = props;
  const { from, to, now } = evening;
  const inner = Math.max(1, size.width - size.gutter);
  const x = (at: Instant): number => size.gutter + (inner * (at - from)) / Math.max(1, to - from);
  const apart = ((to - from) / 60_000) * (labelWidth / inner);
  const tops = laneTops(evening.lanes, size);
  const height = (tops.at(-1) ?? 0) + size.axis;
  const base = height - size.axis;
  return (
    <svg
      class="lanes"
      width={size.width}
      height={height}
      viewBox={`0 0 ${size.width} ${height}`}
      {...(onPick === undefined
        ? { "aria-hidden": true }
        : { role: "group", "aria-label": "The evening, by hands, oven and burners" })}
    >
      {roundTimes(from, to, apart, utcOffsetMinutes).map((at) => (
        <g key={at} class="lane-time">
          <line x1={x(at)} x2={x(at)} y1={0} y2={base} />
          <text x={x(at)} y={height - 4} text-anchor={x(at) > size.width - labelWidth / 2 ? "end" : "middle"}>
            {clockOf(at).replace(/ [ap]m$/, "")}
          </text>
        </g>
      ))}
      {evening.lanes.map((lane, index) => (
        <g key={lane.name} transform={`translate(0 ${tops[index] ?? 0})`}>
          <LaneGround lane={lane} size={size} />
          <Heat
            curve={heats.get(lane.name)}
            height={lane.rows * size.rowHeight}
            x={x}
            isNamed={size.rowHeight > 30}
          />
          {lane.bars.map((bar) => (
            <LaneBarShape
              key={bar.task}
              bar={bar}
              x={x}
              rowHeight={size.rowHeight}
              isPicked={bar.task === picked}
              {...(onPick === undefined ? {} : { onPick })}
            />
          ))}
        </g>
      ))}
      {evening.serveAt !== null && (
        <line class="serve-line" x1={x(evening.serveAt)} x2={x(evening.serveAt)} y1={0} y2={base} />
      )}
      <line class="ready-line" x1={x(evening.readyAt)} x2={x(evening.readyAt)} y1={0} y2={base} />
      <g class="now-line">
        <line x1={x(now)} x2={x(now)} y1={0} y2={base} />
        <circle cx={x(now)} cy={base} r={5} />
      </g>
    </svg>
  );
}

function laneTops(lanes: readonly Lane[], size: PictureSize): readonly number[] {
  return lanes.reduce<readonly number[]>(
    (tops, lane) => [...tops, (tops.at(-1) ?? 0) + lane.rows * size.rowHeight + laneGap],
    [0],
  );
}

function LaneGround({ lane, size }: { readonly lane: Lane; readonly size: PictureSize }) {
  const height = lane.rows * size.rowHeight;
  return (
    <g class="lane-ground">
      <rect x={size.gutter} y={0} width={Math.max(0, size.width - size.gutter)} height={height} rx={4} />
      <text x={size.gutter - 8} y={height / 2} dy="0.35em" text-anchor="end">
        {lane.label}
      </text>
    </g>
  );
}

interface HeatProps {
  readonly curve: HeatCurve | undefined;
  readonly height: number;
  readonly x: (at: Instant) => number;
  /** Only a tall lane has room for figures. */
  readonly isNamed: boolean;
}

function Heat({ curve, height, x, isNamed }: HeatProps) {
  if (curve === undefined) return null;
  const y = (share: number): number => height - share * (height - 2);
  const line = curve.points.map(({ at, share }) => `${x(at)},${y(share)}`).join(" ");
  const [first, last] = [curve.points[0], curve.points.at(-1)];
  if (first === undefined || last === undefined) return null;
  return (
    <g class="heat">
      <polygon points={`${x(first.at)},${height} ${line} ${x(last.at)},${height}`} />
      <polyline points={line} />
      {isNamed &&
        curve.labels.map(({ at, text, share }) => (
          <text key={at} x={x(at) - 6} y={Math.max(16, y(share) - 6)} text-anchor="end">
            {text}
          </text>
        ))}
    </g>
  );
}
