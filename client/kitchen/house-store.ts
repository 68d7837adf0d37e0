import { computed, effect, signal, untracked } from "@preact/signals";
import type { ReadonlySignal, Signal } from "@preact/signals";
import { decideHouse, numberedInHouse } from "../../core/house/decide.ts";
import type { HouseEvent } from "../../core/house/events.ts";
import { appendHouse, emptyHouseLog } from "../../core/house/house.ts";
import type { HouseLog } from "../../core/house/house.ts";
import type { HouseOrder } from "../../core/house/orders.ts";
import { parseHouseEvent } from "../../core/house/parse.ts";
import type { Acknowledged, HouseOrderMessage } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import {
  dropPendingHouse,
  keepHouse,
  keepPendingHouse,
  readKeptHouse,
  readPendingHouse,
} from "../storage/kept-house.ts";
import type { Clock } from "./clock.ts";
import { createOutbox } from "./outbox.ts";
import type { Line, Outbox } from "./outbox.ts";
import type { HouseLine } from "./server-link.ts";

/** The house on this device: what the server has confirmed, and on top what this device has already decided. */
export interface HouseStore {
  readonly log: ReadonlySignal<HouseLog>;
  /** How many orders the server has not confirmed. */
  readonly waiting: ReadonlySignal<number>;
  /** Decides here at once, and sends. Each gets an id of its own. */
  readonly give: (orders: readonly HouseOrder[]) => void;
  readonly close: () => void;
}

/** What stands between the page and the line. */
interface Joint {
  readonly outbox: Outbox<HouseOrderMessage>;
  readonly confirmed: Signal<HouseLog>;
  readonly line: Line<HouseOrderMessage>;
}

/** Takes what the server tells, at every join and in between. @returns what stops it */
function follow(house: HouseLine, { outbox, confirmed, line }: Joint): () => void {
  const take = (log: HouseLog, events: readonly HouseEvent[]): void => {
    confirmed.value = appendHouse(log, events);
    outbox.confirm(new Set(events.map(({ command }) => command)));
    keepHouse(confirmed.value.events);
  };
  // What is told while the answer to a join is under way may be newer than that.
  let meanwhile: readonly HouseEvent[] = [];
  const join = async (): Promise<void> => {
    meanwhile = [];
    const told = await house.ask("house", null).catch(() => null);
    // No answer: the next join asks again.
    if (told === null) return;
    take(emptyHouseLog, [...eventsIn(told), ...meanwhile]);
    await outbox.flush(line);
  };
  const stopJoining = effect(() => {
    if (house.state.value === "joined") untracked(() => void join());
  });
  const stopListening = house.onEvents((told) => {
    const events = eventsIn(told);
    meanwhile = [...meanwhile, ...events];
    take(confirmed.value, events);
  });
  return () => {
    stopJoining();
    stopListening();
  };
}

/** @param onRefused told each sentence with which the server turns down what this device had decided */
export function createHouseStore(
  clock: Pick<Clock, "read">,
  house: HouseLine,
  onRefused: (sentence: string) => void,
): HouseStore {
  const outbox = createOutbox<HouseOrderMessage>(
    { keep: keepPendingHouse, drop: dropPendingHouse },
    onRefused,
  );
  outbox.open(readPendingHouse());
  const confirmed = signal<HouseLog>(appendHouse(emptyHouseLog, readKeptHouse()));
  const line: Line<HouseOrderMessage> = {
    state: house.state,
    send: (message) => house.ask("house-order", message) as Promise<Acknowledged>,
  };
  const close = follow(house, { outbox, confirmed, line });
  return {
    log: computed(() => outbox.waiting.value.reduce(onTop, confirmed.value)),
    waiting: computed(() => outbox.waiting.value.length),
    give: (orders) => {
      if (orders.length === 0) return;
      const at = clock.read();
      outbox.add(orders.map((order) => ({ id: crypto.randomUUID(), at, order })));
      void outbox.flush(line);
    },
    close,
  };
}

/** What a waiting order will bring about, decided here with the server's own rules. */
function onTop(log: HouseLog, message: HouseOrderMessage): HouseLog {
  const command = { id: message.id, at: instant(message.at), order: message.order };
  const decision = decideHouse(command, log);
  return decision.ok ? appendHouse(log, numberedInHouse(command, log, decision.value)) : log;
}

function eventsIn(told: unknown): readonly HouseEvent[] {
  const { events }: { events?: unknown } = typeof told === "object" && told !== null ? told : {};
  const parsed = Array.isArray(events) ? events.map(parseHouseEvent) : [];
  return parsed.flatMap((event) => (event.ok ? [event.value] : []));
}
