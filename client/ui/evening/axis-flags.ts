import type { Instant } from "../../../core/units/quantity.ts";
import type { Evening } from "./evening-layout.ts";
import { widthOf } from "./picture-size.ts";
import type { AcrossOf, PictureSize } from "./picture-size.ts";

/** A moment that has its own line through the lanes and its time on the axis. */
export interface AxisFlag {
  readonly kind: "now" | "ready" | "asked";
  readonly at: Instant;
  /** "now 5:26". */
  readonly text: string;
  readonly left: number;
  readonly width: number;
}

/** Nearer together, what is ready and what was asked for are one moment. */
const sameMs = 90_000;
const gap = 4;

/**
 * Now, ready, and when the cook asked to eat, side by side on the axis and inside the picture.
 * @param nowWord what now is called; on paper it is when that was printed
 */
export function axisFlags(
  { from, to, now, readyAt, serveAt }: Evening,
  x: AcrossOf,
  size: PictureSize,
  clock: (at: Instant) => string,
  nowWord: string,
): readonly AxisFlag[] {
  const isOne = serveAt !== null && Math.abs(serveAt - readyAt) < sameMs;
  const flags = [
    { kind: "now", at: now, text: `${nowWord} ${clock(now)}` } as const,
    ...(isOne ? [] : [{ kind: "ready", at: readyAt, text: `ready ${clock(readyAt)}` } as const]),
    ...(serveAt === null ? [] : [{ kind: "asked", at: serveAt, text: `eat ${clock(serveAt)}` } as const]),
  ]
    .filter(({ at }) => at >= from && at <= to)
    .map((flag) => ({ ...flag, width: widthOf(flag.text, size.text) + 8 }))
    .toSorted((a, b) => a.at - b.at);
  return apart(
    flags.map((flag) => ({ ...flag, left: x(flag.at) - flag.width / 2 })),
    size.width,
  );
}

/** Pushes flags to the right until none covers another, then back into the picture. */
function apart(flags: readonly AxisFlag[], width: number): readonly AxisFlag[] {
  let free = 0;
  const pushed = flags.map((flag) => {
    const left = Math.max(free, flag.left);
    free = left + flag.width + gap;
    return { ...flag, left };
  });
  let end = width;
  return pushed
    .toReversed()
    .map((flag) => {
      const left = Math.min(flag.left, end - flag.width);
      end = left - gap;
      return { ...flag, left };
    })
    .toReversed();
}
