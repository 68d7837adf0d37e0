import { planInputOf } from "../cook/run-sheet.ts";
import type { Session } from "../cook/session.ts";
import { criticalChain } from "../plan/critical-chain.ts";
import type { RunSheet } from "../plan/model.ts";
import type { Dish } from "../recipe/model.ts";
import { spokenDuration } from "../units/duration.ts";
import { between, inMinutes, later, minutes, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { clockAt, theDish } from "./speech.ts";
import type { Kitchen } from "./model.ts";

/** What one device has told, or knows, of when dinner is to be. */
export interface DinnerWatch {
  /** When dinner is, as far as the cook has been told. */
  readonly told: Instant;
  readonly asked: Instant | null;
  /** When it was to be at the last look, and since when. */
  readonly seen: Instant;
  readonly since: Instant;
}

/** A smaller slip is not worth a word. */
const least = minutes(2);
/** A dinner that stays where it is for so long has settled; one that slips by a minute each minute never does. */
const settled = seconds(90);
/** So much is told all the same. */
const much = minutes(5);
/** What has less than this to spare is not said to be able to wait. */
const roomy = minutes(10);

const tableOf = ({ serveAt }: Session, { readyAt }: RunSheet): Instant =>
  serveAt === null ? readyAt : later(serveAt, readyAt);

/** The watch as it begins: what is planned now is known. */
export function beginWatch(session: Session, sheet: RunSheet, now: Instant): DinnerWatch {
  const table = tableOf(session, sheet);
  return { told: table, asked: session.serveAt, seen: table, since: now };
}

/**
 * Looks at the plan once more. `slip`: by how much dinner is later than was told, where that is a real change and no
 * drift from minute to minute; null where there is nothing to say. A time that the cook sets is no slip.
 */
export function lookAgain(
  watch: DinnerWatch,
  session: Session,
  sheet: RunSheet,
  now: Instant,
): { readonly watch: DinnerWatch; readonly slip: Seconds | null } {
  if (watch.asked !== session.serveAt) return { watch: beginWatch(session, sheet, now), slip: null };
  const table = tableOf(session, sheet);
  const isMoved = Math.abs(between(watch.seen, table)) >= 30;
  const seen: DinnerWatch = isMoved ? { ...watch, seen: table, since: now } : watch;
  if (session.phase.state !== "cooking") return { watch: { ...seen, since: now }, slip: null };
  const slip = between(seen.told, table);
  const isSettled = between(seen.since, now) >= settled;
  if (slip >= much || (slip >= least && isSettled)) return { watch: { ...seen, told: table }, slip };
  return { watch: slip < 0 && isSettled ? { ...seen, told: table } : seen, slip: null };
}

/** The dish that dinner does not wait for and whose next step has time: the one that comes up first. */
function ableToWait(session: Session, sheet: RunSheet, now: Instant): Dish | null {
  const chain = criticalChain(planInputOf(session, now), sheet);
  const pressing = session.tasks.filter(({ id }) => chain.includes(id)).map(({ dish }) => dish.id);
  const next = sheet.entries.flatMap((entry) => {
    const task = session.tasks.find(({ id }) => id === entry.task);
    const isWaiting = session.progress.get(entry.task)?.state === "waiting";
    return task === undefined || !isWaiting ? [] : [{ dish: task.dish, slack: entry.slack }];
  });
  const found = next.find(({ dish, slack }, at) => {
    const isFirst = next.findIndex((other) => other.dish.id === dish.id) === at;
    return isFirst && slack >= roomy && !pressing.includes(dish.id);
  });
  return found?.dish ?? null;
}

/** "Dinner slips four minutes to six thirty-four; the soup can wait." */
export function saySlip(
  slip: Seconds,
  session: Session,
  sheet: RunSheet,
  kitchen: Pick<Kitchen, "now" | "utcOffsetMinutes">,
): string {
  const by = spokenDuration(minutes(Math.round(inMinutes(slip))));
  const dish = ableToWait(session, sheet, kitchen.now);
  const rest = dish === null ? "" : `; ${theDish(dish)} can wait`;
  return `Dinner slips ${by} to ${clockAt(tableOf(session, sheet), kitchen)}${rest}.`;
}
