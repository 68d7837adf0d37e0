interface ChoiceProps<V extends string> {
  readonly name: string;
  readonly options: readonly (readonly [value: V, label: string])[];
  readonly value: V;
  readonly onChoose: (value: V) => void;
}

/** One of a few: a row of keys of which one is pressed. */
export function Choice<V extends string>({ name, options, value, onChoose }: ChoiceProps<V>) {
  return (
    <div class="choice" role="group" aria-label={name}>
      {options.map(([option, label]) => (
        <button
          key={option}
          type="button"
          class="key key-small"
          aria-pressed={option === value}
          onClick={() => onChoose(option)}
        >
          {label}
        </button>
      ))}
    </div>
  );
}
