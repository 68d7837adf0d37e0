import { inMinutes, minutes } from "../units/quantity.ts";
import type { Seconds } from "../units/quantity.ts";
import type { Intent, IntentType } from "./intent.ts";
import { mention } from "./intent.ts";
import type { SlotName, Slots } from "./slots.ts";

const lengths: readonly SlotName[] = ["extra", "span", "number"];

const WANTED: ReadonlyMap<IntentType, readonly SlotName[]> = new Map<IntentType, readonly SlotName[]>([
  ["StartTimer", lengths],
  ["Lengthen", lengths],
  ["Shorten", lengths],
  ["QuietFor", lengths],
  ["KeepFree", lengths],
  ["GoTo", ["target"]],
  ["First", ["target"]],
  ["HowMuch", ["food"]],
  ["Instead", ["food"]],
  ["UseInstead", ["stand"]],
  ["RenameTimer", ["name"]],
  ["ServeAt", ["clock"]],
  ["WhatIfServeAt", ["clock"]],
  ["WhyNotYet", ["target"]],
  ["OvenAt", ["heat"]],
  ["WhatIsLeftFor", ["dish"]],
  ["PutAway", ["number"]],
  ["MakeFor", ["number"]],
]);

/** The slots any of which would complete an intent that lacks something. */
export const wantedSlots = (intent: Intent): readonly SlotName[] => WANTED.get(intent.type) ?? [];

function lengthIn({ extra, span, number }: Slots): Seconds | null {
  const said = extra ?? span;
  return said?.high ?? (number === null ? null : minutes(number));
}

/** The intent completed by what the slots caught; a bare figure is minutes where a length was asked for. */
export function completed(intent: Intent, slots: Slots): Intent {
  const { type } = intent;
  if (type === "StartTimer" || type === "KeepFree") {
    const length = lengthIn(slots);
    const span = slots.span ?? slots.extra ?? (length === null ? null : { low: length, high: length });
    return { ...intent, span: span ?? intent.span };
  }
  if (type === "Lengthen" || type === "Shorten") return { ...intent, by: lengthIn(slots) };
  if (type === "QuietFor") {
    const length = lengthIn(slots);
    return { ...intent, minutes: length === null ? null : inMinutes(length) };
  }
  if (type === "GoTo" || type === "First" || type === "WhyNotYet")
    return { ...intent, target: mention(slots.target) };
  if (type === "HowMuch" || type === "Instead") return { ...intent, food: mention(slots.food) };
  if (type === "UseInstead") return { ...intent, use: mention(slots.stand) };
  if (type === "RenameTimer") return { ...intent, name: mention(slots.name) };
  if (type === "ServeAt" || type === "WhatIfServeAt") return { ...intent, minute: slots.clock };
  if (type === "PutAway" || type === "MakeFor") return { ...intent, servings: slots.number };
  if (type === "OvenAt") return { ...intent, heat: slots.heat };
  return type === "WhatIsLeftFor" ? { ...intent, dish: mention(slots.dish) } : intent;
}
