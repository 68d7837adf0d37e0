import type { ListAtHand } from "../../../core/shop/at-hand.ts";

interface KeysProps {
  readonly hand: ListAtHand;
  /** Whether a list was made here that can be thrown away; what the house wants besides stays. */
  readonly isMade: boolean;
  readonly onClear: () => void;
  readonly onThrowAway: () => void;
}

/** What is done with the list as a whole. */
export function ListKeys({ hand, isMade, onClear, onThrowAway }: KeysProps) {
  return (
    <div class="deed-keys">
      <button
        type="button"
        class="key key-small key-quiet"
        disabled={!hand.lines.some(({ isTicked }) => isTicked)}
        onClick={onClear}
      >
        Clear the ticks
      </button>
      {isMade && (
        <button type="button" class="key key-small key-quiet" onClick={onThrowAway}>
          Throw the list away
        </button>
      )}
    </div>
  );
}
