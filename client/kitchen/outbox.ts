import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { Acknowledged } from "../../core/sync/protocol.ts";
import type { LinkState } from "./server-link.ts";

/** What is sent: each message has an id of its own, and the server carries it out once. */
type Message = { readonly id: string };

/** Where messages are kept until the server has answered them. */
export interface Shelf<M extends Message> {
  readonly keep: (message: M) => void;
  readonly drop: (id: string) => void;
}

/** Where messages go. */
export interface Line<M extends Message> {
  readonly state: ReadonlySignal<LinkState>;
  /** Rejects when no answer comes: the message is still pending then. */
  readonly send: (message: M) => Promise<Acknowledged>;
}

/** The orders that the server has not confirmed, in the order in which they were given. */
export interface Outbox<M extends Message> {
  readonly waiting: ReadonlySignal<readonly M[]>;
  readonly add: (messages: readonly M[]) => void;
  /** These commands stand in the server's log now. */
  readonly confirm: (ids: ReadonlySet<string>) => void;
  /** Turns to what was kept before, and to nothing else. */
  readonly open: (kept: readonly M[]) => void;
  /** Sends what waits, one at a time: an order may rest on the one before. */
  readonly flush: (line: Line<M>) => Promise<void>;
}

/** @param onRefused told each sentence with which the server turns down what this device had decided */
export function createOutbox<M extends Message>(
  { keep, drop }: Shelf<M>,
  onRefused: (sentence: string) => void,
): Outbox<M> {
  const waiting = signal<readonly M[]>([]);
  let isFlushing = false;

  const settle = (isDone: (message: M) => boolean): void => {
    const done = waiting.value.filter(isDone);
    if (done.length === 0) return;
    for (const { id } of done) drop(id);
    waiting.value = waiting.value.filter((message) => !isDone(message));
  };

  const sendAll = async (line: Line<M>): Promise<void> => {
    while (line.state.value === "joined") {
      const next = waiting.value[0];
      if (next === undefined) return;
      const answer = await line.send(next);
      settle(({ id }) => id === next.id);
      if (!answer.ok) onRefused(answer.sentence);
    }
  };

  return {
    waiting,
    add: (messages) => {
      messages.forEach(keep);
      waiting.value = [...waiting.value, ...messages];
    },
    confirm: (ids) => settle((message) => ids.has(message.id)),
    open: (kept) => void (waiting.value = kept),
    flush: async (line) => {
      if (isFlushing) return;
      isFlushing = true;
      // No answer: everything stays waiting and goes out with the next join.
      await sendAll(line).catch(() => undefined);
      isFlushing = false;
    },
  };
}
