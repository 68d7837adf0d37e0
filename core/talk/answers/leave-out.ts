import { listed } from "../../cook/say-call.ts";
import { planInputOf } from "../../cook/run-sheet.ts";
import { isLate, withoutOne } from "../../plan/leave-out.ts";
import type { LeftOut } from "../../plan/leave-out.ts";
import { spokenRoughly } from "../../units/duration.ts";
import type { Kitchen } from "../model.ts";
import type { Scene } from "../outcome.ts";
import { clockAt, countWords, theDish } from "../speech.ts";

const named = ({ dishes }: LeftOut): string => listed(dishes.map(theDish));

const offersOf = ({ session, sheet }: Scene, kitchen: Kitchen): readonly LeftOut[] =>
  session.phase.state === "ended" ? [] : withoutOne(planInputOf(session, kitchen.now), sheet);

/**
 * Without which dish a dinner that is late would be in time, or else when: "Without the stew we would make it." It only
 * tells: whether a dish may be spared is the cook's to say. "" where no dish would help, or there is no breath for it.
 * @param words how many it may take
 */
export function sayWithout(scene: Scene, kitchen: Kitchen, words: number): string {
  const [best, next] = offersOf(scene, kitchen);
  if (best === undefined) return "";
  const ready = clockAt(best.readyAt, kitchen);
  const other = next === undefined || isLate(next) ? [] : [` or ${named(next)}`];
  const ways = isLate(best)
    ? [`Without ${named(best)} we could eat at ${ready}.`, `Without ${named(best)}: ${ready}.`]
    : [...other, ""].map((or) => `Without ${named(best)}${or} we would make it.`);
  return ways.find((way) => countWords(way) <= words) ?? "";
}

/** What goes behind how late it is: "or in time without the stew", "or ten minutes"; null where no dish would help. */
export function lateWithout(scene: Scene, kitchen: Kitchen): string | null {
  const [best] = offersOf(scene, kitchen);
  if (best === undefined) return null;
  return `or ${isLate(best) ? spokenRoughly(best.late) : "in time"} without ${named(best)}`;
}
