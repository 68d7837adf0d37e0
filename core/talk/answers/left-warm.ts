import { byDay } from "../../house/day-words.ts";
import { leftoverId } from "../../house/leftover.ts";
import type { Leftover } from "../../house/leftover.ts";
import { standingOf } from "../../house/standing.ts";
import { guidance } from "../../keeping/guidance-table.ts";
import { spokenHeat } from "../../units/temperature.ts";
import type { IntentOf } from "../intent.ts";
import { told } from "../outcome.ts";
import type { Outcome } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { exactly, firstKind, orderedInHouse, standing, withThing } from "./left.ts";
import type { Cupboard } from "./left.ts";
import { putAway } from "./left-deeds.ts";
import { besides, withCold, sayHeated } from "./left-heated.ts";
import { amountIn } from "./left-words.ts";

const allThrough = (): string =>
  `${capital(spokenHeat({ degrees: guidance.reheatTo.value, scale: "F" }))} all through, within two hours`;

/** What is said where something is to be warmed that must not be; null where it may. */
function refusesWarmth(leftover: Leftover, cupboard: Cupboard): string | null {
  switch (standingOf(leftover, cupboard.kitchen.now)) {
    case "good":
    case "past-best":
      return null;
    case "spent":
      return "Not at all: it is past its day. Throw it away.";
    case "heated":
      return `${sayHeated(leftover, cupboard)} Once is the practice; a second time is yours to judge.`;
    case "heated-long":
      return `${sayHeated(leftover, cupboard)} How it was kept since, only you can judge.`;
  }
}

/** "How do I warm up the soup?": notes nothing. */
export const howToWarm = (intent: IntentOf<"HowToWarm">, cupboard: Cupboard): Outcome =>
  withCold(intent, cupboard, (thing) => {
    const how = `${allThrough()}; measure the middle. Warm only what you eat, once.`;
    if (thing.kind === "dish") return told(how);
    return told(
      refusesWarmth(thing.leftover, cupboard) ?? `${how}${besides(intent.what, thing.leftover, cupboard)}`,
    );
  });

/** "I am warming up two bowls of the soup": notes it. */
export const nowWarming = (intent: IntentOf<"NowWarming">, cupboard: Cupboard): Outcome =>
  withCold(intent, cupboard, (thing) => {
    if (thing.kind === "dish")
      return told(`${allThrough()}. I note nothing: I know of none that was put away.`);
    const refused = refusesWarmth(thing.leftover, cupboard);
    return refused === null ? warmed(thing.leftover, intent, cupboard) : told(refused);
  });

function warmed(leftover: Leftover, intent: IntentOf<"NowWarming">, cupboard: Cupboard): Outcome {
  const { id } = leftover;
  const as = leftoverId(`${cupboard.kitchen.utteranceId}-heated`);
  const some = intent.servings === null ? null : { servings: exactly(intent.servings), as };
  return orderedInHouse(cupboard, [{ type: "HeatLeftover", id, some }], ({ leftovers }) => {
    const [hot, cold] = [leftovers.get(as), leftovers.get(id)];
    const what =
      hot === undefined || cold === undefined
        ? "Noted as heated: it is not kept again."
        : `${capital(amountIn(hot))} noted as heated, ${amountIn(cold)} left cold.`;
    return told(`${what} ${allThrough()}.${besides(intent.what, leftover, cupboard)}`);
  });
}

/** "Put the soup back in the fridge": what was heated is not; what is there is; a dish is put away. */
export const putBack = (intent: IntentOf<"PutBack">, cupboard: Cupboard): Outcome =>
  withThing(
    intent.what,
    cupboard,
    firstKind(intent.what, cupboard, [
      standing(cupboard, "heated", "heated-long"),
      standing(cupboard, "good", "past-best", "spent"),
    ]),
    (what) => ({ ...intent, what }),
    (thing) => {
      if (thing.kind === "dish")
        return putAway(
          {
            type: "PutAway",
            what: { by: "dish", dish: thing.dish.dish },
            servings: null,
            place: intent.place,
          },
          cupboard,
        );
      const { leftover } = thing;
      const standingNow = standingOf(leftover, cupboard.kitchen.now);
      if (leftover.heatedAt !== null) return told(sayHeated(leftover, cupboard));
      if (standingNow === "spent") return told("It is past its day. Throw it away.");
      return told(
        `For me it is still in the ${leftover.place}: ${amountIn(leftover)}, ${byDay(leftover.useBy, cupboard.kitchen)}.`,
      );
    },
  );
