import type { Clock } from "../../kitchen/clock.ts";
import type { Line } from "../../kitchen/caller.ts";
import { clockTime } from "../galley.ts";

interface SoFarProps {
  readonly lines: readonly Line[];
  readonly clock: Clock;
}

/** The conversation, the newest first. */
export function SoFar({ lines, clock }: SoFarProps) {
  if (lines.length === 0) return <p class="hint">Nothing has been said yet.</p>;
  return (
    <ol class="so-far">
      {lines.toReversed().map((line) => (
        <li key={line.id} class={`line line-${line.who}`}>
          <span class="line-head">
            {line.who === "cook" ? "You" : "Caller"}, {clockTime(line.at, clock)}
          </span>
          <span>{line.text}</span>
          {line.understood !== null && <span class="understood">→ {line.understood}</span>}
        </li>
      ))}
    </ol>
  );
}
