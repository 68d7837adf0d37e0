import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { DietAnswer, MealCard as Meal } from "../../../core/sync/protocol.ts";
import { formatDuration } from "../../../core/units/duration.ts";
import { minutes, plus } from "../../../core/units/quantity.ts";
import type { Wanted } from "../../kitchen/meal-store.ts";
import { clockTime } from "../galley.ts";
import type { Galley } from "../galley.ts";
import { DietLine } from "./diet-line.tsx";
import { LazyDiet } from "./lazy-diet.tsx";
import { MealChoices } from "./meal-choices.tsx";

/** How a meal is to be made. */
type Chosen = Pick<Wanted, "servings" | "swaps">;

interface MealCardProps {
  readonly meal: Meal;
  readonly galley: Galley;
  readonly isPicked: boolean;
  readonly onPick: () => void;
  readonly onShop: (wanted: Chosen) => void;
  readonly onLook: (wanted: Chosen) => void;
}

/** One meal: what it is and when it could be on the table. Picked, it unfolds. */
export function MealCard({ meal, galley, isPicked, onPick, onShop, onLook }: MealCardProps) {
  const { clock } = galley;
  const takes = minutes(meal.takesMinutes);
  const panel = `choices-${meal.id}`;
  const card = useRef<HTMLLIElement>(null);
  useLayoutEffect(() => {
    if (!isPicked) return;
    // The picked card stands first. The key for the second touch must be in sight after the first touch, and as much
    // of what stands above it as there is room for.
    window.scrollTo(0, 0);
    card.current?.querySelector(".key-light")?.scrollIntoView({ block: "nearest" });
  }, [isPicked]);
  return (
    <li ref={card} class={`meal ${isPicked ? "is-picked" : ""}`}>
      <button
        type="button"
        class="meal-face"
        aria-expanded={isPicked}
        aria-controls={isPicked ? panel : undefined}
        onClick={onPick}
      >
        <span class="meal-name">{meal.name}</span>
        <span class="meal-about">{meal.about}</span>
        <span class="meal-dishes">
          {meal.dishes.map((dish, index) => (
            <span key={dish.id} class={`meal-dish dish-${(index % 8) + 1}`}>
              {dish.name}
            </span>
          ))}
        </span>
        <span class="meal-time">
          <b>{formatDuration({ low: takes, high: takes })}</b> of cooking; begun now, on the table{" "}
          <b>{clockTime(plus(clock.now.value, takes), clock)}</b>
        </span>
        {meal.diet !== null && <DietLine diet={meal.diet} />}
      </button>
      {isPicked && (
        <div id={panel} class="meal-choices">
          <Unfolded meal={meal} galley={galley} onShop={onShop} onLook={onLook} />
        </div>
      )}
    </li>
  );
}

/** Whether there is more to tell than that all is allowed. */
const isTold = ({ verdict, notes }: DietAnswer): boolean => verdict !== "allowed" || notes.length > 0;

type Lighting =
  | { readonly state: "ready" }
  | { readonly state: "lighting" }
  | { readonly state: "refused"; readonly sentence: string };

function Unfolded({ meal, galley, onShop, onLook }: Omit<MealCardProps, "isPicked" | "onPick">) {
  const [lighting, setLighting] = useState<Lighting>({ state: "ready" });
  const [swaps, setSwaps] = useState<Wanted["swaps"]>([]);
  const light = (wanted: Omit<Wanted, "swaps">): void => {
    galley.wake();
    setLighting({ state: "lighting" });
    void galley.store.begin(meal.id, { ...wanted, swaps }).then((sentence) => {
      setLighting(sentence === null ? { state: "lighting" } : { state: "refused", sentence });
    });
  };
  return (
    <>
      <MealChoices
        meal={meal}
        clock={galley.clock}
        isBusy={lighting.state === "lighting"}
        onLight={light}
        onShop={(servings) => onShop({ servings, swaps })}
        onLook={(servings) => onLook({ servings, swaps })}
      />
      {lighting.state === "refused" && (
        <p class="refused" role="alert">
          {lighting.sentence}
        </p>
      )}
      {meal.diet !== null && isTold(meal.diet) && (
        <LazyDiet galley={galley} meal={meal.id} diet={meal.diet} swaps={swaps} onSwaps={setSwaps} />
      )}
      {meal.cautions.length > 0 && (
        <ul class="meal-cautions" aria-label="Take care">
          {meal.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
    </>
  );
}
