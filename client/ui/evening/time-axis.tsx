import type { Instant } from "../../../core/units/quantity.ts";
import type { AxisFlag } from "./axis-flags.ts";
import { widthOf } from "./picture-size.ts";
import type { AcrossOf, PictureSize } from "./picture-size.ts";

interface TimeLinesProps {
  readonly times: readonly Instant[];
  readonly x: AcrossOf;
  readonly base: number;
}

/** Round moments of the clock, as faint lines behind the lanes. */
export function TimeLines({ times, x, base }: TimeLinesProps) {
  return (
    <g class="lane-time">
      {times.map((at) => (
        <line key={at} x1={x(at)} x2={x(at)} y1={0} y2={base} />
      ))}
    </g>
  );
}

interface TimeAxisProps extends TimeLinesProps {
  readonly flags: readonly AxisFlag[];
  readonly size: PictureSize;
  readonly clock: (at: Instant) => string;
}

/** The clock beneath the lanes, and over them the lines of now, of ready and of the time asked for. */
export function TimeAxis({ times, flags, x, base, size, clock }: TimeAxisProps) {
  const row = size.text * 1.35;
  const top = base + 2;
  const free = times.filter((at) => {
    const half = widthOf(clock(at), size.text) / 2 + 4;
    return (
      x(at) - half > 0 &&
      x(at) + half < size.width &&
      flags.every(({ left, width }) => x(at) + half < left || x(at) - half > left + width)
    );
  });
  return (
    <g aria-hidden="true">
      {free.map((at) => (
        <text key={at} class="lane-clock" x={x(at)} y={top + row / 2} dy="0.36em" text-anchor="middle">
          {clock(at)}
        </text>
      ))}
      {flags.map(({ kind, at, text, left, width }) => (
        <g key={kind} class={`flag flag-${kind}`}>
          <line x1={x(at)} x2={x(at)} y1={0} y2={top} />
          <rect x={left} y={top} width={width} height={row} rx={3} />
          <text x={left + width / 2} y={top + row / 2} dy="0.36em" text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
    </g>
  );
}
