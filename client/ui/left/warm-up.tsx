import { useState } from "preact/hooks";
import type { Leftover } from "../../../core/house/leftover.ts";
import { servingsFigure, servingsWords } from "../../../core/house/servings-words.ts";
import { compare, fromNumber, ONE, toNumber } from "../../../core/units/rational.ts";
import { Counter } from "../parts/counter.tsx";
import type { OnDeed } from "../parts/deed.ts";

interface WarmUpProps {
  readonly leftover: Leftover;
  readonly onDeed: OnDeed;
}

/** That it is being warmed up: all of it at a touch, or first how much where there is more than a serving. */
export function WarmUp({ leftover, onDeed }: WarmUpProps) {
  const [count, setCount] = useState<number | null>(null);
  const { id, name, rest, servingsOf } = leftover;
  const most = rest.kind === "servings" && compare(rest.servings, ONE) > 0 ? toNumber(rest.servings) : null;
  const warm = (servings: number | null): void => {
    const amount = servings === null ? "" : `${servingsWords(fromNumber(servings), servingsOf)} of `;
    const what = { by: "leftover", leftover: id } as const;
    onDeed({
      label: "warming up",
      intent: { type: "NowWarming", what, servings },
      words: `I am warming up ${amount}the ${name.toLowerCase()}`,
    });
    setCount(null);
  };
  if (count === null || most === null) {
    return (
      <button
        type="button"
        class="key key-small"
        aria-label={`Warming up: ${name}`}
        onClick={() => (most === null ? warm(null) : setCount(most))}
      >
        Warming up
      </button>
    );
  }
  const figure = servingsFigure(fromNumber(count), servingsOf);
  return (
    <div class="warm-up">
      <Counter
        name="How much of it"
        value={figure}
        onLess={count > 0.5 ? () => setCount(count - 0.5) : null}
        onMore={count < most ? () => setCount(Math.min(most, count + 0.5)) : null}
      />
      <div class="deed-keys">
        <button
          type="button"
          class="key key-small"
          aria-label={`Warming up ${figure}: ${name}`}
          onClick={() => warm(count === most ? null : count)}
        >
          Warming up {figure}
        </button>
        <button
          type="button"
          class="key key-small key-quiet"
          aria-label={`Not now: ${name}`}
          onClick={() => setCount(null)}
        >
          Not now
        </button>
      </div>
    </div>
  );
}
