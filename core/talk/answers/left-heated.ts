import type { Leftover } from "../../house/leftover.ts";
import { standingOf } from "../../house/standing.ts";
import type { IntentOf, Mention } from "../intent.ts";
import type { Outcome } from "../outcome.ts";
import { firstKind, leftoversMeant, standing, withThing } from "./left.ts";
import type { Cupboard, LeftThing } from "./left.ts";
import { whenHeated } from "./left-words.ts";

/** What is cold and good goes before what was heated, and that before what is past its day: it is what is meant. */
const coldFirst = (what: Mention | null, cupboard: Cupboard): ((thing: LeftThing) => boolean) =>
  firstKind(what, cupboard, [
    standing(cupboard, "good", "past-best"),
    standing(cupboard, "heated", "heated-long"),
    standing(cupboard, "spent"),
  ]);

/** Finds what is meant, what is cold and good first, and goes on with it. */
export const withCold = (
  intent: IntentOf<"HowLongKept" | "HowToWarm" | "NowWarming">,
  cupboard: Cupboard,
  go: (thing: LeftThing) => Outcome,
): Outcome =>
  withThing(intent.what, cupboard, coldFirst(intent.what, cupboard), (what) => ({ ...intent, what }), go);

/** What else there is of that name and is not meant: it must not be taken for it. */
export function besides(what: Mention | null, meant: Leftover, cupboard: Cupboard): string {
  const { now } = cupboard.kitchen;
  if (meant.heatedAt !== null || what === null) return "";
  const others = leftoversMeant(what, cupboard).filter(({ id }) => id !== meant.id);
  if (others.some(({ heatedAt }) => heatedAt !== null)) return " Not what was heated before.";
  return others.some((one) => standingOf(one, now) === "spent") ? " Not what is past its day." : "";
}

/** What becomes of something that was heated: it was, and when, and that it is not kept. */
export function sayHeated(leftover: Leftover, { kitchen }: Cupboard): string {
  const { heatedAt } = leftover;
  if (heatedAt === null) return "";
  const when = `It was heated ${whenHeated(heatedAt, kitchen)}`;
  return standingOf(leftover, kitchen.now) === "heated"
    ? `${when}: eat it now, or throw it away.`
    : `${when}, over two hours ago: throw it away.`;
}
