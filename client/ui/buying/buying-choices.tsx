import { useState } from "preact/hooks";
import type { BuyingRequest } from "../../../core/sync/buying-request.ts";
import type { MealCard } from "../../../core/sync/protocol.ts";
import type { KeptList } from "../../kitchen/buying-model.ts";
import { asInFile } from "./buying-props.ts";

interface ChoicesProps {
  readonly kept: KeptList;
  readonly meals: readonly MealCard[];
  readonly isBusy: boolean;
  readonly onChange: (wanted: BuyingRequest) => void;
}

/** For which meals the list is, and what is in the house already. */
export function BuyingChoices({ kept, meals, isBusy, onChange }: ChoicesProps) {
  const { wanted } = kept;
  const isOn = (meal: MealCard): boolean => wanted.meals.some((one) => one.meal === meal.id);
  const turn = (meal: MealCard): void => {
    const others = wanted.meals.filter((one) => one.meal !== meal.id);
    onChange({ ...wanted, meals: isOn(meal) ? others : [...others, asInFile(meal)] });
  };
  return (
    <div class="buying-choices">
      <section>
        <h3>One list for</h3>
        <div class="deed-keys">
          {meals.map((meal) => (
            <button
              key={meal.id}
              type="button"
              class="key key-small"
              aria-pressed={isOn(meal)}
              // A list is for one meal at least.
              disabled={isBusy || (isOn(meal) && wanted.meals.length === 1)}
              onClick={() => turn(meal)}
            >
              {meal.name}
            </button>
          ))}
        </div>
      </section>
      <House kept={kept} isBusy={isBusy} onChange={onChange} />
    </div>
  );
}

function House({ kept, isBusy, onChange }: Omit<ChoicesProps, "meals">) {
  const { wanted, mistakes } = kept;
  const [text, setText] = useState(wanted.house);
  return (
    <section>
      <h3>
        <label for="buying-house">In the house already</label>
      </h3>
      <p class="hint" id="buying-how">
        A line for each thing: “3 onions”, “half a head of garlic”. “Oil” alone means that there is some.
      </p>
      <textarea
        id="buying-house"
        class="buying-field"
        rows={4}
        maxLength={4000}
        aria-describedby="buying-how"
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      {mistakes.map(({ line, sentence }) => (
        <p key={line} class="refused" role="alert">
          Line {line}: {sentence}
        </p>
      ))}
      <div class="deed-keys">
        <button
          type="button"
          class="key key-small"
          disabled={isBusy || text === wanted.house}
          onClick={() => onChange({ ...wanted, house: text })}
        >
          Take it off the list
        </button>
      </div>
    </section>
  );
}
