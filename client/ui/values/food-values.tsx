import { useMemo } from "preact/hooks";
import type { FoodBook } from "../../../core/diet/food-book.ts";
import { valuesCaution, valuesSource } from "../../../core/food/values-words.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { DietFindings } from "../start/diet-findings.tsx";
import { DietLine } from "../start/diet-line.tsx";
import { mealView } from "./meal-view.ts";
import { ValueTable } from "./value-table.tsx";
import type { ValuesProps } from "./values-props.ts";

/** What is in a meal, and whether it may be eaten, as far as anybody knows. */
export function FoodValues({ galley, meal }: ValuesProps) {
  const foods = galley.foods.value;
  if (foods === null)
    return (
      <p class="values-none">
        {galley.store.link.value === "lost"
          ? "What is in it cannot be told while the server is away."
          : "What is known of foods is not here yet; it is told as soon as it comes."}
      </p>
    );
  if (meal.dishes.length === 0) return <p>Nothing comes to the table: every dish is left out.</p>;
  return <Told meal={meal} book={foods.book} />;
}

function Told({ meal, book }: { readonly meal: CookingMeal; readonly book: FoodBook }) {
  const { diet, tables, dayProblem } = useMemo(() => mealView(meal, book), [meal, book]);
  return (
    <div class="values">
      {diet === null ? (
        <p>No diet is written down for it, so nobody can say whether it may be eaten.</p>
      ) : (
        <details class="value-dish">
          <summary>
            <DietLine diet={diet} />
          </summary>
          <DietFindings diet={diet} />
        </details>
      )}
      <p class="hint">Touch a value of a dish to see where it comes from.</p>
      {tables.map((table) => (
        <ValueTable key={table.name} table={table} isOpen={table === tables[0]} />
      ))}
      {dayProblem !== null && <p>{dayProblem}</p>}
      <div class="values-source">
        <p>What is unknown is not nought: where something is unknown, the true figure may be higher.</p>
        <p>
          SR28 is the {valuesSource}. Other figures are from your own labels, as far as their rounding tells.
        </p>
        <p>{valuesCaution}</p>
      </div>
    </div>
  );
}
