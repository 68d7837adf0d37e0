import { render } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { TaskId } from "../../../../core/plan/model.ts";
import type { Evening } from "../evening-layout.ts";
import type { EveningProps } from "../evening-props.ts";
import type { PictureSize } from "../picture-size.ts";
import { drawnEvening } from "../drawn-evening.ts";
import { paperRows } from "./paper-rows.ts";
import { leastPoints, RunSheetPaper } from "./run-sheet-paper.tsx";
import type { PaperSetting } from "./run-sheet-paper.tsx";

/** What is printable of A4 and of Letter on their side, within margins of 8 mm: the less of either, in CSS pixels. */
const paperWidth = 994;
/** The lanes may take this much of the page's height; their rows are made lower for it. */
const mostForLanes = 270;

/** From what is easiest to read to what holds the most. */
const settings: readonly PaperSetting[] = [
  ...[11.5, 11, 10.5, 10, 9.5, 9, 8.5, 8].map((points) => ({ points, columns: 2, hasMoments: true })),
  ...[8.5, 8, 7.5].map((points) => ({ points, columns: 3, hasMoments: true })),
  ...[8.5, 8, 7.5, leastPoints].map((points) => ({ points, columns: 3, hasMoments: false })),
];

/**
 * While it is on the page, whatever is printed is the run sheet: the paper is set up as the browser begins to print,
 * whether by our key or by its own command, and taken away afterwards.
 */
export function usePaper(props: EveningProps, chain: readonly TaskId[]): void {
  const latest = useRef({ props, chain });
  latest.current = { props, chain };
  useEffect(() => {
    const paper = document.createElement("section");
    const lay = (): void => {
      paper.className = "paper";
      document.body.append(paper);
      layOut(paper, latest.current.props, latest.current.chain);
    };
    const away = (): void => {
      render(null, paper);
      paper.remove();
    };
    window.addEventListener("beforeprint", lay);
    window.addEventListener("afterprint", away);
    return () => {
      window.removeEventListener("beforeprint", lay);
      window.removeEventListener("afterprint", away);
      away();
    };
  }, []);
}

/** In the largest letters with which all of it stands on the page. */
function layOut(paper: HTMLElement, props: EveningProps, chain: readonly TaskId[]): void {
  const { session, sheet, clockOf, utcOffsetMinutes } = props;
  const drawn = drawnEvening(props, chain, "whole");
  const rows = paperRows({ session, sheet }, chain);
  const picture = pictureSize(drawn.evening, drawn.heats.size);
  for (const setting of settings) {
    render(
      <RunSheetPaper
        {...drawn}
        session={session}
        rows={rows}
        setting={setting}
        picture={picture}
        clockOf={clockOf}
        utcOffsetMinutes={utcOffsetMinutes}
      />,
      paper,
    );
    if (isWhole(paper)) return;
  }
  // More than a page holds: nothing may be cut off, so it goes on on the next one.
  paper.classList.add("is-long");
}

function isWhole(paper: HTMLElement): boolean {
  const list = paper.querySelector(".paper-list");
  if (list === null) return true;
  return list.scrollWidth <= list.clientWidth + 1 && list.scrollHeight <= list.clientHeight + 1;
}

function pictureSize({ lanes }: Evening, ovens: number): PictureSize {
  const rows = lanes.reduce((sum, lane) => sum + lane.rows, 0);
  const [heat, axis] = [20, 16];
  const room = mostForLanes - axis - ovens * heat - lanes.length * 3;
  const rowHeight = Math.max(15, Math.min(30, Math.floor(room / rows)));
  return {
    width: paperWidth,
    rowHeight,
    gutter: 62,
    axis,
    heat,
    text: 11,
    title: rowHeight < 19 ? null : 9.5,
  };
}
