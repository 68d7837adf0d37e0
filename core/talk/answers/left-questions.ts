import { byDay } from "../../house/day-words.ts";
import type { Leftover } from "../../house/leftover.ts";
import { firstToUse, standingOf } from "../../house/standing.ts";
import { guidance } from "../../keeping/guidance-table.ts";
import type { Keeping } from "../../keeping/keeping.ts";
import { numberWords } from "../../units/number-words.ts";
import type { IntentOf } from "../intent.ts";
import { told } from "../outcome.ts";
import type { Outcome } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { inParts } from "../speech.ts";
import type { Cupboard } from "./left.ts";
import { besides, withCold, sayHeated } from "./left-heated.ts";
import { amountIn, saidBy, shortLeft, whenHeated } from "./left-words.ts";

/** "What is left in the fridge?": the oldest use-by first; what is past it is to be thrown away. */
export function askFridge({ place }: IntentOf<"AskFridge">, cupboard: Cupboard): Outcome {
  const there = firstToUse(cupboard.house.leftovers).filter((one) => one.place === place);
  if (there.length === 0) return told(`I know of nothing that is left in the ${place}.`);
  return inParts(
    "",
    there.map((one) => item(one, cupboard)),
  );
}

function item(leftover: Leftover, { kitchen }: Cupboard): string {
  const { name, useBy, heatedAt } = leftover;
  const what = `${shortLeft(name, [])}, ${amountIn(leftover)}`;
  const heated = heatedAt === null ? "" : `heated ${whenHeated(heatedAt, kitchen)}`;
  switch (standingOf(leftover, kitchen.now)) {
    case "good":
      return `${what}, ${byDay(useBy, kitchen)}`;
    case "past-best":
      return `${what}, past its best: use it soon`;
    case "spent":
      return `${what}, past its day: throw it away`;
    case "heated":
      return `${what}, ${heated}: eat it now`;
    case "heated-long":
      return `${what}, ${heated}: throw it away`;
  }
}

/** "How long does the soup keep?": by guidance, and whose it is. */
export const howLongKept = (intent: IntentOf<"HowLongKept">, cupboard: Cupboard): Outcome =>
  withCold(intent, cupboard, (thing) => {
    if (thing.kind === "dish") return told(sayKeeping(thing.dish.keeping));
    return told(`${sayKept(thing.leftover, cupboard)}${besides(intent.what, thing.leftover, cupboard)}`);
  });

function sayKept(leftover: Leftover, cupboard: Cupboard): string {
  const { name, useBy, source } = leftover;
  switch (standingOf(leftover, cupboard.kitchen.now)) {
    case "good":
      return `Use it ${byDay(useBy, cupboard.kitchen)}, by ${saidBy(source)}. If it smells or looks wrong, sooner.`;
    case "past-best":
      return "It is past its best, but safe as long as it stays frozen. Use it soon.";
    case "spent":
      return `${capital(shortLeft(name, []))} is past its day: throw it away.`;
    case "heated":
    case "heated-long":
      return sayHeated(leftover, cupboard);
  }
}

function sayKeeping({ fridgeDays, source, known }: Keeping): string {
  const days = `${numberWords(fridgeDays)} ${fridgeDays === 1 ? "day" : "days"}`;
  const months = numberWords(Math.round(guidance.freezerDays.value / 30));
  if (known === "all")
    return `${capital(days)} in the fridge, by ${saidBy(source)}; ${months} months in the freezer.`;
  const lack = known === "none" ? "what is in it" : (known.but[0] ?? "all that is in it");
  return `I do not know ${lack}, so by the strictest figure: ${days} in the fridge.`;
}
