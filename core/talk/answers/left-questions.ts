import type { Leftover } from "../../house/leftover.ts";
import { guidance } from "../../keeping/guidance-table.ts";
import type { Keeping } from "../../keeping/keeping.ts";
import { numberWords } from "../../units/number-words.ts";
import { spokenHeat } from "../../units/temperature.ts";
import type { IntentOf } from "../intent.ts";
import { told } from "../outcome.ts";
import type { Outcome } from "../outcome.ts";
import { capital, inParts } from "../speech.ts";
import { withThing } from "./left.ts";
import type { Cupboard } from "./left.ts";
import { amountIn, byDay, saidBy, shortLeft } from "./left-words.ts";

/** "What is left in the fridge?": the oldest use-by first; what is past it is to be thrown away. */
export function askFridge({ place }: IntentOf<"AskFridge">, cupboard: Cupboard): Outcome {
  const { kitchen, house } = cupboard;
  const there = [...house.leftovers.values()]
    .filter((one) => one.place === place)
    .toSorted((a, b) => a.useBy - b.useBy);
  if (there.length === 0) return told(`I know of nothing that is left in the ${place}.`);
  return inParts(
    "",
    there.map((one) => item(one, cupboard, kitchen.now)),
  );
}

function item(leftover: Leftover, { kitchen }: Cupboard, now: number): string {
  const what = `${shortLeft(leftover.name, [])}, ${amountIn(leftover)}`;
  if (leftover.useBy >= now) return `${what}, ${byDay(leftover.useBy, kitchen)}`;
  return `${what}, ${leftover.place === "freezer" ? "past its best: use it soon" : "past its day: throw it away"}`;
}

/** "How long does the soup keep?": by guidance, and whose it is. */
export const howLongKept = (intent: IntentOf<"HowLongKept">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    () => true,
    (what) => ({ ...intent, what }),
    (thing) => {
      if (thing.kind === "dish") return told(sayKeeping(thing.dish.keeping));
      const { name, useBy, source, place } = thing.leftover;
      const until = byDay(useBy, cupboard.kitchen);
      // Frozen it stays safe: only its taste suffers (USDA FSIS, from memory).
      if (until === "no more" && place === "freezer")
        return told("It is past its best, but safe as long as it stays frozen. Use it soon.");
      return told(
        until === "no more"
          ? `${capital(shortLeft(name, []))} is past its day: throw it away.`
          : `Use it ${until}, by ${saidBy(source)}. If it smells or looks wrong, sooner.`,
      );
    },
  );

const isSpent = ({ place, useBy }: Leftover, now: number): boolean => place === "fridge" && useBy < now;

function sayKeeping({ fridgeDays, source, known }: Keeping): string {
  const days = `${numberWords(fridgeDays)} ${fridgeDays === 1 ? "day" : "days"}`;
  const months = numberWords(Math.round(guidance.freezerDays.value / 30));
  if (known === "all")
    return `${capital(days)} in the fridge, by ${saidBy(source)}; ${months} months in the freezer.`;
  const lack = known === "none" ? "what is in it" : (known.but[0] ?? "all that is in it");
  return `I do not know ${lack}, so by the strictest figure: ${days} in the fridge.`;
}

/** "How do I warm up the soup?" */
export const howToWarm = (intent: IntentOf<"HowToWarm">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    () => true,
    (what) => ({ ...intent, what }),
    (thing) => {
      const isPast = thing.kind === "leftover" && isSpent(thing.leftover, cupboard.kitchen.now);
      if (isPast) return told("Not at all: it is past its day. Throw it away.");
      const heat = spokenHeat({ degrees: guidance.reheatTo.value, scale: "F" });
      return told(
        `${capital(heat)} all through, within two hours; measure the middle. Warm only what you eat, once.`,
      );
    },
  );
