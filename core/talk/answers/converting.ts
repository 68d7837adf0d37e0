import { spokenAmount, spokenConversion } from "../../units/amount-words.ts";
import { inScale, spokenHeatInFull } from "../../units/temperature.ts";
import type { IntentOf } from "../intent.ts";
import type { Outcome } from "../outcome.ts";
import { told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";

/** "How many tablespoons in a quarter cup". */
export function convertAmount({ from, to }: IntentOf<"Convert">): Outcome {
  if (from === null) return told("Tell me how much of what unit, like a quarter cup.");
  const converted = spokenConversion(from, to);
  return told(converted.ok ? `${capital(spokenAmount(from))} is ${converted.value}.` : converted.error);
}

/** "What is one eighty Celsius in Fahrenheit". */
export function convertHeat({ from, to }: IntentOf<"ConvertHeat">): Outcome {
  return told(`${capital(spokenHeatInFull(from))} is ${spokenHeatInFull(inScale(from, to))}.`);
}
