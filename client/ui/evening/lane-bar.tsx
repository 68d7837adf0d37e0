import type { TaskId } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { LaneBar } from "./evening-layout.ts";

interface LaneBarProps {
  readonly bar: LaneBar;
  readonly x: (at: Instant) => number;
  readonly rowHeight: number;
  readonly isPicked: boolean;
  readonly onPick?: (task: TaskId) => void;
}

/** A shorter bar carries no words. */
const leastForTitle = 70;
/** A finger's width: a one-minute step must still be hit. */
const leastTouch = 48;

/** One step on its lane: faded when done, glowing while it runs. */
export function LaneBarShape({ bar, x, rowHeight, isPicked, onPick }: LaneBarProps) {
  const [left, right] = [x(bar.from), x(bar.to)];
  const width = Math.max(3, right - left - 1);
  const [top, height] = [bar.row * rowHeight + 1, rowHeight - 2];
  const words = { done: "done", running: "running now", focus: "in hand", ahead: "to come" } as const;
  const pick =
    onPick === undefined
      ? {}
      : pickable(`${bar.title}, ${words[bar.state]}`, isPicked, () => onPick(bar.task));
  return (
    <g
      class={`lane-bar lane-${bar.state} ${bar.mark === undefined ? "" : `dish-${bar.mark.colour}`} ${isPicked ? "is-picked" : ""}`}
    >
      <g class="lane-hit" {...pick}>
        {onPick !== undefined && width < leastTouch && (
          <rect
            class="lane-touch"
            x={left + width / 2 - leastTouch / 2}
            y={top}
            width={leastTouch}
            height={height}
          />
        )}
        <rect class="lane-fill" x={left} y={top} width={width} height={height} rx={Math.min(5, width / 2)} />
      </g>
      <LaneWords bar={bar} x={x} box={{ left, top, width, height }} />
    </g>
  );
}

interface LaneWordsProps extends Pick<LaneBarProps, "bar" | "x"> {
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
}

/** What is written on a bar: for the eye only, since it may be cut short; the bar's own name is whole. */
function LaneWords({ bar, x, box: { left, top, width, height } }: LaneWordsProps) {
  const room = Math.floor((width - 34) / (height > 40 ? 10.5 : 7));
  return (
    <g class="lane-words" aria-hidden="true">
      {width > 14 && height > 9 && (
        <text
          class="lane-letter"
          x={left + (width > leastForTitle ? 12 : width / 2)}
          y={top + height / 2}
          dy="0.35em"
          text-anchor="middle"
        >
          {bar.mark?.letter ?? ""}
        </text>
      )}
      {width > leastForTitle && height > 20 && (
        <text class="lane-title" x={left + 26} y={top + height / 2} dy="0.35em">
          {bar.title.length > room ? `${bar.title.slice(0, Math.max(0, room - 1))}…` : bar.title}
        </text>
      )}
      {bar.ticks.map((at) => (
        <line key={at} class="lane-tick" x1={x(at)} x2={x(at)} y1={top + height - 6} y2={top + height} />
      ))}
    </g>
  );
}

function pickable(label: string, isPicked: boolean, pick: () => void) {
  return {
    role: "button",
    // An SVG element knows the attribute in lower case only.
    tabindex: 0,
    "aria-label": label,
    "aria-pressed": isPicked,
    onClick: pick,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== "Enter" && event.key !== " ") return;
      event.preventDefault();
      pick();
    },
  } as const;
}
