import type { Pace, PaceWish } from "../../../core/pace/pace.ts";
import { kindWords, sayLearnt, sayPlanned } from "../../../core/pace/say-pace.ts";
import { Choice } from "../parts/choice.tsx";

const wishes = [
  ["as-learnt", "As learnt"],
  ["slower", "Slower"],
  ["as-written", "As the recipe says"],
  ["faster", "Faster"],
] as const;
/** At the stove nothing is planned shorter than the recipe has it, so it is not offered. */
const atTheStove = wishes.filter(([wish]) => wish !== "faster");

interface PaceRowProps {
  readonly pace: Pace;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
  /** null: as learnt. */
  readonly onWish: (wish: PaceWish | null) => void;
}

/** One kind of work: how long the cook takes for it, what the plan makes of that, and the keys to say otherwise. */
export function PaceRow({ pace, isOpen, onOpen, onWish }: PaceRowProps) {
  const name = kindWords[pace.kind];
  return (
    <li>
      <span>
        <b class="pace-kind">{name}</b>
        <span>{sayLearnt(pace)}</span> <span class="pace-planned">{sayPlanned(pace)}</span>
      </span>
      <button
        type="button"
        class="key key-small"
        aria-expanded={isOpen}
        aria-label={`Change: ${name}`}
        onClick={onOpen}
      >
        Change
      </button>
      {isOpen && (
        <Choice
          name={`How to plan ${name}`}
          options={pace.kind === "stove" ? atTheStove : wishes}
          value={pace.wish ?? "as-learnt"}
          onChoose={(wish) => onWish(wish === "as-learnt" ? null : wish)}
        />
      )}
    </li>
  );
}
