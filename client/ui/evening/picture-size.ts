import type { Instant } from "../../../core/units/quantity.ts";
import type { Evening, Lane } from "./evening-layout.ts";

/** How large everything is, in CSS pixels. */
export interface PictureSize {
  readonly width: number;
  readonly rowHeight: number;
  /** What the names of the lanes take up on the left. */
  readonly gutter: number;
  /** What the clock takes up below. */
  readonly axis: number;
  /** The strip above an oven's bars in which its heat is drawn. */
  readonly heat: number;
  /** How large the letters of the dishes and of the axis are. */
  readonly text: number;
  /** How large the titles on the bars are; null where there is no room for any. */
  readonly title: number | null;
}

/** Where a lane lies. */
export interface LaneBox {
  readonly lane: Lane;
  readonly top: number;
  /** 0 where no heat is drawn. */
  readonly heat: number;
  readonly height: number;
}

/** Where a moment lies, from the left. */
export type AcrossOf = (at: Instant) => number;

const laneGap = 3;

/** The lanes from top to bottom; `heated` names those with a strip for their heat. */
export function laneBoxes(
  { lanes }: Evening,
  size: PictureSize,
  heated: { readonly has: (name: string) => boolean },
): readonly LaneBox[] {
  let top = 0;
  return lanes.map((lane) => {
    const heat = heated.has(lane.name) ? size.heat : 0;
    const box: LaneBox = { lane, top, heat, height: heat + lane.rows * size.rowHeight };
    top += box.height + laneGap;
    return box;
  });
}

/** How high the lanes are together. */
export const lanesHeight = (boxes: readonly LaneBox[]): number => {
  const last = boxes.at(-1);
  return last === undefined ? 0 : last.top + last.height + laneGap;
};

/** From a moment to its place: the evening fills what the gutter leaves, and what began before it begins at its edge. */
export function acrossOf({ from, to }: Evening, size: PictureSize): AcrossOf {
  const inner = Math.max(1, size.width - size.gutter);
  return (at) => size.gutter + (inner * Math.max(0, at - from)) / Math.max(1, to - from);
}

/** The strip under a bar: the line of what dinner waits for, and how much later a step may start. */
export const stripOf = (rowHeight: number): number => Math.max(3, Math.round(rowHeight * 0.17));

/** About how wide a text stands in letters of a size; the real letters are never much wider. */
export const widthOf = (text: string, letters: number): number => text.length * letters * 0.56;
