import { minutes } from "../units/quantity.ts";
import { inMinutes } from "../units/quantity.ts";
import type { Seconds } from "../units/quantity.ts";
import type { Intent } from "./intent.ts";
import { mention } from "./intent.ts";
import type { SlotName, Slots } from "./slots.ts";

/** The slots any of which would complete an intent that lacks something. */
export function wantedSlots(intent: Intent): readonly SlotName[] {
  switch (intent.type) {
    case "StartTimer":
    case "Lengthen":
    case "Shorten":
    case "QuietFor":
      return ["extra", "span", "number"];
    case "GoTo":
    case "First":
    case "Done":
    case "HowDone":
    case "WhatGoesIn":
      return ["target"];
    case "HowMuch":
    case "Instead":
      return ["food"];
    case "UseInstead":
      return ["stand"];
    case "RenameTimer":
      return ["name"];
    case "ServeAt":
      return ["clock"];
    case "OvenAt":
      return ["heat"];
    case "WhatIsLeftFor":
      return ["dish"];
    default:
      return [];
  }
}

function lengthIn({ extra, span, number }: Slots): Seconds | null {
  const said = extra ?? span;
  return said?.high ?? (number === null ? null : minutes(number));
}

/** The intent completed by what the slots caught; a bare figure is minutes where a length was asked for. */
export function completed(intent: Intent, slots: Slots): Intent {
  const length = lengthIn(slots);
  switch (intent.type) {
    case "StartTimer": {
      const span = slots.span ?? slots.extra ?? (length === null ? null : { low: length, high: length });
      return { ...intent, span: span ?? intent.span };
    }
    case "Lengthen":
    case "Shorten":
      return { ...intent, by: length };
    case "QuietFor":
      return { ...intent, minutes: length === null ? null : inMinutes(length) };
    case "GoTo":
    case "First":
    case "Done":
    case "HowDone":
    case "WhatGoesIn":
      return { ...intent, target: mention(slots.target) };
    case "HowMuch":
    case "Instead":
      return { ...intent, food: mention(slots.food) };
    case "UseInstead":
      return { ...intent, use: mention(slots.stand) };
    case "RenameTimer":
      return { ...intent, name: mention(slots.name) };
    case "ServeAt":
      return { ...intent, minute: slots.clock };
    case "OvenAt":
      return { ...intent, heat: slots.heat };
    case "WhatIsLeftFor":
      return { ...intent, dish: mention(slots.dish) };
    default:
      return intent;
  }
}
