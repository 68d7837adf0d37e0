import { computed, effect, signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { SwapChoice } from "../../core/cook/chosen-swaps.ts";
import { decide, numbered } from "../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import type { Order } from "../../core/cook/orders.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { MealLog, Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import type { NoteAnswer } from "../../core/next-time/note.ts";
import type { OrderMessage, Pantry } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { dropOthers, dropPending, keepPending, readPending } from "../storage/pending-orders.ts";
import { keepLog, readKeptLog } from "../storage/kept-log.ts";
import type { Clock } from "./clock.ts";
import { createOutbox } from "./outbox.ts";
import type { Outbox } from "./outbox.ts";
import { openLink } from "./server-link.ts";
import type { HouseLine, LinkState, ServerLink } from "./server-link.ts";

/** What a meal is begun with. */
export interface Wanted {
  readonly servings: Readonly<Record<string, number>>;
  readonly serveAt: Instant | null;
  /** How many help the cook. */
  readonly helpers: number;
  /** What is to be taken for what. */
  readonly swaps: readonly SwapChoice[];
  /** What was said to the notes of evenings before, by their keys. */
  readonly notes: Readonly<Record<string, NoteAnswer>>;
}

/** The meal on this device: what the server has confirmed, and on top what this device has already decided. */
export interface MealStore {
  readonly link: ReadonlySignal<LinkState>;
  /** False until the first snapshot has come or the kept log stands in for it. */
  readonly isLoaded: ReadonlySignal<boolean>;
  readonly log: ReadonlySignal<MealLog>;
  readonly session: ReadonlySignal<Session | null>;
  readonly sheet: ReadonlySignal<RunSheet | null>;
  /** How many orders the server has not confirmed. */
  readonly waiting: ReadonlySignal<number>;
  /** Decides here at once, and sends. Each gets an id of its own. */
  readonly give: (orders: readonly Order[]) => void;
  /** A sentence when it was refused, null when the meal is on. */
  readonly begin: (meal: string, wanted: Wanted) => Promise<string | null>;
  readonly pantry: () => Promise<Pantry>;
  readonly close: () => void;
}

/** The same where it is joined to the server: the household log goes over that line too. */
interface JoinedMealStore extends MealStore {
  readonly houseLine: HouseLine;
}

/** What the server has told, whole. */
interface Confirmed {
  readonly session: string | null;
  readonly log: MealLog;
  readonly isLoaded: boolean;
}

/** @param onRefused told each sentence with which the server turns down what this device had decided */
export function createMealStore(clock: Clock, onRefused: (sentence: string) => void): JoinedMealStore {
  const outbox = createOutbox({ keep: keepPending, drop: dropPending }, onRefused);
  const confirmed = signal(confirmedBefore(outbox));
  const link = linkTo(clock, outbox, confirmed);
  const log = computed(() => outbox.waiting.value.reduce(onTop, confirmed.value.log));
  const session = computed(() => log.value.session);
  const minute = computed(() => instant(Math.floor(clock.now.value / 60_000) * 60_000));
  const stopKeeping = effect(() => {
    const { session: id, log: known } = confirmed.value;
    keepLog(id === null ? null : { session: id, events: known.events });
  });
  const stopWaking = effect(() => {
    if (clock.slept.value !== null) link.rejoin();
  });
  return {
    link: link.state,
    isLoaded: computed(() => confirmed.value.isLoaded),
    log,
    session,
    sheet: computed(() => (session.value === null ? null : runSheetOf(session.value, minute.value))),
    waiting: computed(() => outbox.waiting.value.length),
    give: (orders) => {
      const id = confirmed.value.session;
      if (id === null || orders.length === 0) return;
      const at = clock.read();
      outbox.add(orders.map((order) => ({ session: id, id: crypto.randomUUID(), at, order })));
      void outbox.flush(link);
    },
    begin: (meal, wanted) => begin(link, meal, wanted),
    pantry: link.pantry,
    houseLine: link.house,
    close: () => {
      stopKeeping();
      stopWaking();
      link.close();
    },
  };
}

/** What this device kept: it stands in until the server speaks, or for it. */
function confirmedBefore(outbox: Outbox<OrderMessage>): Confirmed {
  const kept = readKeptLog();
  if (kept === null) return { session: null, log: emptyLog, isLoaded: false };
  outbox.open(readPending(kept.session));
  return { session: kept.session, log: appendEvents(emptyLog, kept.events), isLoaded: true };
}

function linkTo(clock: Clock, outbox: Outbox<OrderMessage>, confirmed: { value: Confirmed }): ServerLink {
  const link = openLink({
    onSnapshot: (session, events, serverNow) => {
      clock.follow(instant(serverNow));
      if (session !== confirmed.value.session) dropOthers(session);
      confirmed.value = { session, log: appendEvents(emptyLog, events), isLoaded: true };
      outbox.open(session === null ? [] : readPending(session));
      outbox.confirm(new Set(events.map((event) => event.command)));
      void outbox.flush(link);
    },
    onEvents: (session, events) => {
      if (session !== confirmed.value.session) return;
      confirmed.value = { ...confirmed.value, log: appendEvents(confirmed.value.log, events) };
      outbox.confirm(new Set(events.map((event) => event.command)));
    },
  });
  return link;
}

/** What a waiting order will bring about, decided here with the server's own rules. */
function onTop(log: MealLog, message: OrderMessage): MealLog {
  const at = instant(Math.max(message.at, log.session?.lastAt ?? 0));
  const command = { id: message.id, at, order: message.order };
  const decision = decide(command, log);
  return decision.ok ? appendEvents(log, numbered(command, log, decision.value)) : log;
}

async function begin(link: ServerLink, meal: string, wanted: Wanted): Promise<string | null> {
  const answer = await link.begin({ id: crypto.randomUUID(), meal, ...wanted }).catch(() => null);
  if (answer === null) return "The server does not answer. Start it again, then try once more.";
  return answer.ok ? null : answer.sentence;
}
