import { useEffect, useState } from "preact/hooks";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { err, type Result } from "../../../core/units/result.ts";
import { FoodValues } from "./food-values.tsx";
import type { WantedValuesProps } from "./values-props.ts";

type Asked = Result<CookingMeal, string>;

/** What is in a meal before it is begun, with the servings that were chosen. */
export function WantedValues({ galley, wanted }: WantedValuesProps) {
  const [asked, setAsked] = useState<Asked | null>(null);
  const link = galley.store.link.value;
  useEffect(() => {
    let isOpen = true;
    const show = (told: Asked): void => {
      // What was read before is still good to look at.
      if (isOpen) setAsked((before) => (before?.ok === true && !told.ok ? before : told));
    };
    galley.meal(wanted).then(show, () => show(err("What is in it cannot be told while the server is away.")));
    return () => {
      isOpen = false;
    };
  }, [galley, wanted, link]);
  if (asked === null) return <p role="status">Asking what is in it.</p>;
  return asked.ok ? <FoodValues galley={galley} meal={asked.value} /> : <p role="alert">{asked.error}</p>;
}
