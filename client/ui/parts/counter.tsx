interface CounterProps {
  readonly name: string;
  readonly value: string;
  /** null: it goes no further that way. */
  readonly onLess: (() => void) | null;
  readonly onMore: (() => void) | null;
}

/** A value with a key for less and a key for more. */
export function Counter({ name, value, onLess, onMore }: CounterProps) {
  return (
    <div class="counter" role="group" aria-label={name}>
      <span class="counter-name">{name}</span>
      <button
        type="button"
        class="key key-step"
        aria-label={`${name}: less`}
        disabled={onLess === null}
        onClick={() => onLess?.()}
      >
        −
      </button>
      <output class="counter-value">{value}</output>
      <button
        type="button"
        class="key key-step"
        aria-label={`${name}: more`}
        disabled={onMore === null}
        onClick={() => onMore?.()}
      >
        +
      </button>
    </div>
  );
}
