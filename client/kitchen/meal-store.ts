import { computed, effect, signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { decide, numbered } from "../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import type { Order } from "../../core/cook/orders.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { MealLog, Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import type { OrderMessage, Pantry } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import { dropOthers, dropPending, keepPending, readPending } from "../storage/pending-orders.ts";
import { keepLog, readKeptLog } from "../storage/kept-log.ts";
import type { Clock } from "./clock.ts";
import { openLink } from "./server-link.ts";
import type { LinkState } from "./server-link.ts";

/** The meal on this device: what the server has confirmed, and on top what this device has already decided. */
export interface MealStore {
  readonly link: ReadonlySignal<LinkState>;
  /** False until the first snapshot has come or the kept log stands in for it. */
  readonly isLoaded: ReadonlySignal<boolean>;
  readonly log: ReadonlySignal<MealLog>;
  readonly session: ReadonlySignal<Session | null>;
  readonly sheet: ReadonlySignal<RunSheet | null>;
  /** Orders that the server has not confirmed. */
  readonly waiting: ReadonlySignal<number>;
  /** Decides here at once, and sends. Each gets an id of its own. */
  readonly give: (orders: readonly Order[]) => void;
  /** A sentence when it was refused, null when the meal is on. */
  readonly begin: (meal: string, servings: Readonly<Record<string, number>>, serveAt: number | null) => Promise<string | null>;
  readonly pantry: () => Promise<Pantry>;
  readonly close: () => void;
}

/** @param onRefused told each sentence with which the server turns down what this device had decided */
export function createMealStore(clock: Clock, onRefused: (sentence: string) => void): MealStore {
  const kept = readKeptLog();
  const sessionId = signal<string | null>(kept?.session ?? null);
  const confirmed = signal<MealLog>(appendEvents(emptyLog, kept?.events ?? []));
  const pending = signal<readonly OrderMessage[]>(kept === null ? [] : readPending(kept.session));
  const isLoaded = signal(kept !== null);

  const link = openLink({
    onSnapshot: (session, events, serverNow) => {
      clock.follow(instant(serverNow));
      if (session !== sessionId.value) dropOthers(session);
      sessionId.value = session;
      confirmed.value = appendEvents(emptyLog, events);
      pending.value = session === null ? [] : readPending(session);
      isLoaded.value = true;
      void flush();
    },
    onEvents: (session, events) => {
      if (session === sessionId.value) confirm(events);
    },
  });

  const log = computed(() => pending.value.reduce(onTop, confirmed.value));
  const session = computed(() => log.value.session);
  const minute = computed(() => Math.floor(clock.now.value / 60_000));
  const sheet = computed(() => {
    const at = instant(minute.value * 60_000);
    return session.value === null ? null : runSheetOf(session.value, at);
  });
  const stopKeeping = effect(() => {
    const id = sessionId.value;
    keepLog(id === null ? null : { session: id, events: confirmed.value.events });
  });

  function confirm(events: readonly MealEvent[]): void {
    const done = new Set(events.map((event) => event.command));
    confirmed.value = appendEvents(confirmed.value, events);
    settle((message) => done.has(message.id));
  }

  function settle(isDone: (message: OrderMessage) => boolean): void {
    pending.value.filter(isDone).forEach((message) => {
      dropPending(message.id);
    });
    pending.value = pending.value.filter((message) => !isDone(message));
  }

  let flushing = false;
  /** Sends what waits, in order, one at a time: an order may rest on the one before. */
  async function flush(): Promise<void> {
    if (flushing) return;
    flushing = true;
    try {
      for (let next = pending.value[0]; next !== undefined && link.state.value === "joined"; next = pending.value[0]) {
        const { id } = next;
        const answer = await link.send(next);
        settle((message) => message.id === id);
        if (!answer.ok) onRefused(answer.sentence);
      }
    } catch {
      // No answer: everything stays pending and goes out with the next join.
    } finally {
      flushing = false;
    }
  }

  return {
    link: link.state,
    isLoaded,
    log,
    session,
    sheet,
    waiting: computed(() => pending.value.length),
    give: (orders) => {
      const id = sessionId.value;
      if (id === null) return;
      const at = clock.read();
      const messages = orders.map((order): OrderMessage => ({ session: id, id: crypto.randomUUID(), at, order }));
      messages.forEach(keepPending);
      pending.value = [...pending.value, ...messages];
      void flush();
    },
    begin: async (meal, servings, serveAt) => {
      const answer = await link.begin({ id: crypto.randomUUID(), meal, servings, serveAt }).catch(() => null);
      if (answer === null) return "The server does not answer. Start it again, then try once more.";
      return answer.ok ? null : answer.sentence;
    },
    pantry: link.pantry,
    close: () => {
      stopKeeping();
      link.close();
    },
  };
}

/** What a pending order will bring about, decided here with the server's own rules. */
function onTop(log: MealLog, message: OrderMessage): MealLog {
  const command = { id: message.id, at: instant(Math.max(message.at, log.session?.lastAt ?? 0)), order: message.order };
  const decision = decide(command, log);
  return decision.ok ? appendEvents(log, numbered(command, log, decision.value)) : log;
}
