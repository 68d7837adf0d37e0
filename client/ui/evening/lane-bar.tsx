import type { TaskId } from "../../../core/plan/model.ts";
import { plus } from "../../../core/units/quantity.ts";
import type { LaneBar } from "./evening-layout.ts";
import { fitTitle } from "./lane-text.ts";
import { stripOf } from "./picture-size.ts";
import type { AcrossOf, PictureSize } from "./picture-size.ts";

interface LaneBarProps {
  readonly bar: LaneBar;
  /** Where its lane's rows begin, from above. */
  readonly rowsTop: number;
  readonly x: AcrossOf;
  readonly size: PictureSize;
  /** The whole of what the picture tells of this step, in words. */
  readonly words: string;
  readonly isPicked: boolean;
  readonly onPick?: (task: TaskId) => void;
}

/** A finger's width: a one-minute step must still be hit. */
const leastTouch = 48;
/** A bar narrower than this share of its letter's height has no room for it. */
const leastForLetter = 0.85;
/** A lower strip cannot hold three tails one over the other. */
const leastForLevels = 5;
/** A shorter tail cannot be told from the bar's edge. */
const leastTail = 4;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** One step on its lane: dashed when done, glowing while it runs; under it the line that dinner hangs on, or its slack. */
export function LaneBarShape({ bar, rowsTop, x, size, words, isPicked, onPick }: LaneBarProps) {
  const { rowHeight } = size;
  const strip = stripOf(rowHeight);
  const [left, right] = [x(bar.from), x(bar.to)];
  const box: Box = {
    left,
    top: rowsTop + bar.row * rowHeight + 1,
    width: Math.max(3, right - left - 1),
    height: rowHeight - strip - 2,
  };
  const pick = onPick === undefined ? {} : pickable(words, isPicked, () => onPick(bar.task));
  return (
    <g
      class={`lane-bar lane-${bar.state} ${bar.mark === undefined ? "" : `dish-${bar.mark.colour}`} ${isPicked ? "is-picked" : ""}`}
    >
      <g class="lane-hit" {...pick}>
        {onPick !== undefined && (
          <rect
            class="lane-touch"
            x={Math.min(left, left + box.width / 2 - leastTouch / 2)}
            y={box.top}
            width={Math.max(box.width, leastTouch)}
            height={rowHeight - 2}
          />
        )}
        <rect
          class="lane-fill"
          x={left}
          y={box.top}
          width={box.width}
          height={box.height}
          rx={Math.min(5, box.width / 2)}
        />
      </g>
      <Strip bar={bar} x={x} box={{ ...box, top: box.top + box.height + 1, height: strip }} />
      <LaneWords bar={bar} x={x} box={box} size={size} />
    </g>
  );
}

/** Beneath the bar: a heavy line where dinner waits for it, else a thin tail as far as it may be put off. */
function Strip({ bar, x, box }: Pick<LaneBarProps, "bar" | "x"> & { readonly box: Box }) {
  const { left, top, width, height } = box;
  const end = x(plus(bar.to, bar.slack));
  // A low strip has room for one height only.
  const at = top + (height < leastForLevels ? height / 2 : ((bar.level + 0.5) * height) / 3);
  const cap = height < leastForLevels ? height / 2 + 1 : height / 4;
  return (
    <g aria-hidden="true">
      {bar.awaitedTo !== null && (
        <rect
          class="lane-awaited"
          x={left}
          y={top}
          width={Math.max(3, Math.min(width, x(bar.awaitedTo) - left))}
          height={height}
        />
      )}
      {bar.awaitedTo === null && end - left - width > leastTail && (
        <path
          class="lane-slack"
          d={`M${left + width - 1} ${at}H${end - 1}M${end - 1} ${at - cap}V${at + cap}`}
        />
      )}
    </g>
  );
}

/** What is written on a bar: for the eye only, since it may be cut short; the bar's own name is whole. */
function LaneWords({ bar, x, box, size }: Pick<LaneBarProps, "bar" | "x" | "size"> & { readonly box: Box }) {
  const { left, top, width, height } = box;
  const indent = size.text * 1.5;
  const lineHeight = (size.title ?? 0) * 1.12;
  const lines =
    size.title === null
      ? []
      : fitTitle(
          bar.title,
          Math.floor((width - indent - 4) / (size.title * 0.56)),
          Math.max(1, Math.floor(height / lineHeight)),
        );
  const tick = Math.min(6, height * 0.25);
  const middle = top + height / 2;
  return (
    <g class="lane-words" aria-hidden="true">
      {width >= size.text * leastForLetter && (
        <text
          class="lane-letter"
          x={lines.length > 0 ? left + indent * 0.48 : left + width / 2}
          y={middle}
          dy="0.36em"
          text-anchor="middle"
        >
          {bar.mark?.letter ?? ""}
        </text>
      )}
      {lines.map((line, index) => (
        <text
          key={line}
          class="lane-title"
          x={left + indent}
          y={middle + (index - (lines.length - 1) / 2) * lineHeight}
          dy="0.35em"
          font-size={size.title ?? 0}
        >
          {line}
        </text>
      ))}
      {bar.ticks.map((at) => (
        <line key={at} class="lane-tick" x1={x(at)} x2={x(at)} y1={top + height - tick} y2={top + height} />
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
