import type { Session } from "../../core/cook/session.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { railOrder, timerFigures } from "./rail/timer-figures.ts";

/** The page's title tells the state at a glance among other pages: "2:31 roast the squash". */
export function pageTitle(session: Session, sentence: string, now: Instant): string {
  const [first] = railOrder(session.timers.values(), now);
  if (first === undefined) return sentence;
  const { state, digits, seconds } = timerFigures(first, now, () => "");
  const shown = state === "ringing" ? "Ringing:" : state === "paused" ? "Paused:" : `${digits}${seconds}`;
  return `${shown} ${first.name}`;
}
