import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents } from "../../../core/cook/fold.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Dialogue, Reply } from "../../../core/talk/model.ts";
import { commandId } from "../../../core/talk/outcome.ts";
import { respond } from "../../../core/talk/respond.ts";
import { at, kitchenAt } from "./supper.ts";

/** One line of a conversation: at a minute after five, the cook says something. */
export type Line = readonly [minute: number, said: string];

export interface Talk {
  readonly log: MealLog;
  readonly dialogue: Dialogue;
  readonly replies: readonly Reply[];
}

/**
 * Has a whole conversation: each reply's orders are decided on the log before the next line is said,
 * as a device and its server do.
 */
export function talk(log: MealLog, ...lines: readonly Line[]): Talk {
  return lines.reduce<Talk>(
    (before, [minute, said], index) => {
      const kitchen = {
        ...kitchenAt(before.log, minute, before.dialogue),
        utteranceId: `say${before.log.events.length}-${index}`,
      };
      const reply = respond(said, kitchen);
      const after = reply.orders.reduce((current, order, at_) => {
        const command = { id: commandId(kitchen.utteranceId, at_), at: at(minute), order };
        const decision = decide(command, current);
        if (!decision.ok)
          throw new Error(`"${said}" was answered with an order that is refused: ${decision.error.code}`);
        return appendEvents(current, numbered(command, current, decision.value));
      }, before.log);
      return { log: after, dialogue: reply.dialogue, replies: [...before.replies, reply] };
    },
    { log, dialogue: silentDialogue, replies: [] },
  );
}

/** What the caller said to each line. */
export const sayings = (log: MealLog, ...lines: readonly Line[]): readonly string[] =>
  talk(log, ...lines).replies.map(({ say }) => say);
