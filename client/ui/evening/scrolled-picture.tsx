import { useLayoutEffect, useRef } from "preact/hooks";
import type { TaskId } from "../../../core/plan/model.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { useWidth } from "../parts/use-width.ts";
import { LaneNames, LanePicture } from "./lane-picture.tsx";
import { laneBoxes, lanesHeight } from "./picture-size.ts";
import type { PictureSize } from "./picture-size.ts";
import type { DrawnEvening } from "./drawn-evening.ts";

interface ScrolledPictureProps extends DrawnEvening {
  readonly clockOf: (at: Instant) => string;
  readonly utcOffsetMinutes: number;
  readonly picked: TaskId | null;
  readonly onPick: (task: TaskId) => void;
}

/** An hour gets at least this much room, in CSS pixels: a narrow screen scrolls. */
const leastHour = 520;
/** What the names of the lanes take up; on a phone the bars need the room. */
const gutters = { wide: 92, narrow: 70 } as const;
const narrow = 600;

/** The large picture, wider than the screen where it must be; the names of its lanes stay in sight. */
export function ScrolledPicture(props: ScrolledPictureProps) {
  const { evening, heats, clockOf, utcOffsetMinutes, picked, onPick } = props;
  const [box, seen] = useWidth<HTMLDivElement>();
  const gutter = seen < narrow ? gutters.narrow : gutters.wide;
  const length = evening.to - evening.from;
  const width = Math.max(seen - gutter, (length / 3_600_000) * leastHour);
  const isMeasured = seen > 0;
  const left = useRef(0);
  left.current = (width * (evening.now - evening.from)) / Math.max(1, length) - (seen - gutter) / 3;
  useLayoutEffect(() => {
    // The line of now stands a third of the way in, so that more of what comes can be seen; after that the cook's
    // own scrolling counts.
    if (isMeasured) box.current?.scrollTo({ left: left.current });
  }, [isMeasured, box]);
  const size: PictureSize = { width, rowHeight: 50, gutter: 0, axis: 28, heat: 34, text: 17, title: 15 };
  const boxes = laneBoxes(evening, size, heats);
  return (
    <div class="evening-scroll" ref={box} role="region" aria-label="The evening over time" tabIndex={0}>
      {isMeasured && (
        <>
          <svg
            class="lanes lanes-named"
            width={gutter}
            height={lanesHeight(boxes)}
            font-size={seen < narrow ? 15 : 17}
            aria-hidden="true"
          >
            <LaneNames boxes={boxes} gutter={gutter} />
          </svg>
          <LanePicture
            evening={evening}
            heats={heats}
            size={size}
            clockOf={clockOf}
            utcOffsetMinutes={utcOffsetMinutes}
            picked={picked}
            onPick={onPick}
          />
        </>
      )}
    </div>
  );
}
