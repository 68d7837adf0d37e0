import { useWidth } from "../parts/use-width.ts";
import type { EveningInsideProps } from "./evening-props.ts";
import { EveningSheet } from "./evening-sheet.tsx";
import { sayEvening } from "./evening-words.ts";
import { LanePicture } from "./lane-picture.tsx";
import { usePaper } from "./paper/use-paper.tsx";
import { drawnEvening, chainOf } from "./drawn-evening.ts";

/** The small picture with the same in words beside it, the large one while it is open, and the paper. */
export function EveningInside(props: EveningInsideProps) {
  const { clockOf, utcOffsetMinutes, isOpen } = props;
  const [box, width] = useWidth<HTMLDivElement>();
  const chain = chainOf(props);
  usePaper(props, chain);
  const { evening, heats } = drawnEvening(props, chain, "ahead");
  return (
    <>
      <div class="unseen">
        {sayEvening(evening, heats, clockOf).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <div class="evening-box" ref={box}>
        {width > 0 && (
          <LanePicture
            evening={evening}
            heats={heats}
            size={{ width, rowHeight: 16, gutter: 66, axis: 20, heat: 15, text: 13, title: null }}
            clockOf={clockOf}
            utcOffsetMinutes={utcOffsetMinutes}
          />
        )}
      </div>
      {isOpen && <EveningSheet {...props} chain={chain} />}
    </>
  );
}
