import type { TaskId } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { axisFlags } from "./axis-flags.ts";
import { ChainLine } from "./chain-line.tsx";
import type { Evening } from "./evening-layout.ts";
import { roundTimes } from "./evening-layout.ts";
import type { HeatCurve } from "./heat-curve.ts";
import { HeatFigures, HeatStrip } from "./heat-strip.tsx";
import { LaneBarShape } from "./lane-bar.tsx";
import { acrossOf, laneBoxes, lanesHeight } from "./picture-size.ts";
import type { LaneBox, PictureSize } from "./picture-size.ts";
import { TimeAxis, TimeLines } from "./time-axis.tsx";
import { sayBar } from "./evening-words.ts";

interface LanePictureProps {
  readonly evening: Evening;
  readonly heats: ReadonlyMap<string, HeatCurve>;
  readonly size: PictureSize;
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
  /** What the line of now is called; on paper it is when that was printed. */
  readonly nowWord?: string;
  /** Which bar is picked; only where bars can be. */
  readonly picked?: TaskId | null;
  /** With it every bar is a button; without it the picture is for the eye alone, and words stand beside it. */
  readonly onPick?: (task: TaskId) => void;
}

/** Lanes from the first step to the table; the line of now runs through all of them. */
export function LanePicture(props: LanePictureProps) {
  const { evening, heats, size, clockOf, utcOffsetMinutes, nowWord = "now", picked = null, onPick } = props;
  const { from, to } = evening;
  const x = acrossOf(evening, size);
  const boxes = laneBoxes(evening, size, heats);
  const base = lanesHeight(boxes);
  const height = base + size.axis;
  const heated = boxes.flatMap(({ lane, top, heat }) => {
    const curve = heats.get(lane.name);
    return curve === undefined ? [] : [{ name: lane.name, curve, top, height: heat }];
  });
  const clock = (at: Instant): string => clockOf(at).replace(/ [ap]m$/, "");
  const apart = ((to - from) / 60_000) * ((size.text * 5) / Math.max(1, size.width - size.gutter));
  const times = roundTimes(from, to, apart, utcOffsetMinutes);
  return (
    <svg
      class="lanes"
      width={size.width}
      height={height}
      viewBox={`0 0 ${size.width} ${height}`}
      font-size={size.text}
      {...(onPick === undefined
        ? { "aria-hidden": true }
        : { role: "group", "aria-label": "The evening, by hands, oven and burners" })}
    >
      <LaneGrounds boxes={boxes} size={size} />
      <TimeLines times={times} x={x} base={base} />
      {heated.map(({ name, ...strip }) => (
        <HeatStrip key={name} {...strip} x={x} />
      ))}
      <ChainLine evening={evening} boxes={boxes} x={x} size={size} />
      {heated.map(({ name, ...strip }) => (
        <HeatFigures key={name} {...strip} x={x} text={size.text} clock={clock} />
      ))}
      {boxes.map(({ lane, top, heat }) =>
        lane.bars.map((bar) => (
          <LaneBarShape
            key={`${lane.name} ${bar.task}`}
            bar={bar}
            rowsTop={top + heat}
            x={x}
            size={size}
            words={sayBar(bar, clockOf)}
            isPicked={bar.task === picked}
            {...(onPick === undefined ? {} : { onPick })}
          />
        )),
      )}
      <TimeAxis
        times={times}
        flags={axisFlags(evening, x, size, clock, nowWord)}
        x={x}
        base={base}
        size={size}
        clock={clock}
      />
      {size.gutter > 0 && <LaneNames boxes={boxes} gutter={size.gutter} />}
    </svg>
  );
}

function LaneGrounds({ boxes, size }: { readonly boxes: readonly LaneBox[]; readonly size: PictureSize }) {
  return (
    <g class="lane-ground">
      {boxes.map(({ lane, top, height }) => (
        <rect
          key={lane.name}
          x={size.gutter}
          y={top}
          width={Math.max(0, size.width - size.gutter)}
          height={height}
          rx={4}
        />
      ))}
    </g>
  );
}

/** What each lane is: its name at its left, beside its bars. */
export function LaneNames({
  boxes,
  gutter,
}: {
  readonly boxes: readonly LaneBox[];
  readonly gutter: number;
}) {
  return (
    <g class="lane-names" aria-hidden="true">
      {boxes.map(({ lane, top, heat, height }) => (
        <text key={lane.name} x={gutter - 6} y={top + (heat + height) / 2} dy="0.35em" text-anchor="end">
          {lane.label}
        </text>
      ))}
    </g>
  );
}
