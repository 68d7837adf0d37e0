import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { OrderMessage } from "../../core/sync/protocol.ts";
import { dropPending, keepPending, readPending } from "../storage/pending-orders.ts";
import type { ServerLink } from "./server-link.ts";

/** The orders that the server has not confirmed, in the order in which they were given. */
export interface Outbox {
  readonly waiting: ReadonlySignal<readonly OrderMessage[]>;
  readonly add: (messages: readonly OrderMessage[]) => void;
  /** These commands stand in the server's log now. */
  readonly confirm: (ids: ReadonlySet<string>) => void;
  /** Turns to another session (null: none) and takes up what was kept of it. */
  readonly openFor: (session: string | null) => void;
  /** Sends what waits, one at a time: an order may rest on the one before. */
  readonly flush: (link: ServerLink) => Promise<void>;
}

/** @param onRefused told each sentence with which the server turns down what this device had decided */
export function createOutbox(onRefused: (sentence: string) => void): Outbox {
  const waiting = signal<readonly OrderMessage[]>([]);
  let isFlushing = false;

  const settle = (isDone: (message: OrderMessage) => boolean): void => {
    const done = waiting.value.filter(isDone);
    if (done.length === 0) return;
    for (const { id } of done) dropPending(id);
    waiting.value = waiting.value.filter((message) => !isDone(message));
  };

  const sendAll = async (link: ServerLink): Promise<void> => {
    while (link.state.value === "joined") {
      const next = waiting.value[0];
      if (next === undefined) return;
      const answer = await link.send(next);
      settle(({ id }) => id === next.id);
      if (!answer.ok) onRefused(answer.sentence);
    }
  };

  return {
    waiting,
    add: (messages) => {
      messages.forEach(keepPending);
      waiting.value = [...waiting.value, ...messages];
    },
    confirm: (ids) => {
      settle((message) => ids.has(message.id));
    },
    openFor: (session) => {
      waiting.value = session === null ? [] : readPending(session);
    },
    flush: async (link) => {
      if (isFlushing) return;
      isFlushing = true;
      // No answer: everything stays waiting and goes out with the next join.
      await sendAll(link).catch(() => undefined);
      isFlushing = false;
    },
  };
}
