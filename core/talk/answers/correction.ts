import { hours, minutes, seconds } from "../../units/quantity.ts";
import type { Seconds } from "../../units/quantity.ts";
import type { Intent, IntentOf } from "../intent.ts";
import type { Happening } from "../../cook/events.ts";
import type { Dialogue, Kitchen } from "../model.ts";
import type { Outcome } from "../outcome.ts";
import { after, told } from "../outcome.ts";
import { lastCommand } from "../../cook/last-command.ts";

/** The intents whose figure may have been misheard. */
export const isCorrectable = (intent: Intent): boolean =>
  ["StartTimer", "Lengthen", "Shorten", "OvenAt", "ServeAt"].includes(intent.type);

/** "No, fifteen": the last deed again with another figure; null where nothing can be corrected by it. */
export function corrected(correction: IntentOf<"Correct">, was: Intent): Intent | null {
  const { span, number } = correction;
  if (was.type === "StartTimer") {
    const length = number === null ? null : inUnitOf(number, was.span?.high ?? minutes(1));
    const to = span ?? (length === null ? null : { low: length, high: length });
    return to === null ? null : { ...was, span: to };
  }
  if (was.type === "Lengthen" || was.type === "Shorten") {
    return { ...was, by: span?.high ?? (number === null ? was.by : inUnitOf(number, was.by ?? minutes(1))) };
  }
  if (was.type === "OvenAt") {
    return number === null || was.heat === null ? null : { ...was, heat: { ...was.heat, degrees: number } };
  }
  if (was.type !== "ServeAt" || was.minute === null || number === null || number < 1 || number > 12)
    return null;
  return { ...was, minute: (number % 12) * 60 + (was.minute >= 720 ? 720 : 0) };
}

/** A bare figure counts in the unit of what it replaces. */
function inUnitOf(number: number, length: Seconds): Seconds {
  if (length % 3600 === 0) return hours(number);
  return length % 60 === 0 ? minutes(number) : seconds(number);
}

/** Whether this is what the utterance brought about. */
function isOwn(deed: Happening, { intent, utteranceId }: NonNullable<Dialogue["correctable"]>): boolean {
  if (deed.type === "TimerStarted") return deed.timer.startsWith(`timer-${utteranceId}`);
  if (deed.type === "TimerLengthened")
    return intent.type === "Lengthen" && (intent.by ?? deed.by) === deed.by;
  if (deed.type === "TimerShortened") return intent.type === "Shorten" && intent.by === deed.by;
  if (deed.type === "OvenSet")
    return intent.type === "OvenAt" && (intent.heat ?? deed.heat)?.degrees === deed.heat?.degrees;
  return deed.type === "ServingSet" && intent.type === "ServeAt";
}

/**
 * Takes the last deed back and does it anew. Only where that deed is still the last one in the log:
 * another hand may have been quicker, and its work is not to be undone.
 */
export function correct(kitchen: Kitchen, redo: (undone: Kitchen) => Outcome): Outcome {
  const { correctable } = kitchen.dialogue;
  const last = lastCommand(kitchen.log);
  const deeds = kitchen.log.events
    .filter(({ command }) => command === last)
    .map(({ happening }) => happening);
  if (correctable === null || !deeds.some((deed) => isOwn(deed, correctable))) {
    return told("I am not sure what to change. Say the whole of it once more.");
  }
  const undone = after(kitchen, [{ type: "UndoLast" }]);
  if (!undone.ok) return told("That can no longer be changed. Say the whole of it once more.");
  const outcome = redo({
    ...kitchen,
    log: undone.value,
    sheet: null,
    utteranceId: `${kitchen.utteranceId}-again`,
  });
  return { ...outcome, orders: [{ type: "UndoLast" }, ...outcome.orders] };
}
