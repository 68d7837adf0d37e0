import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { io } from "socket.io-client";
import type { Socket } from "socket.io-client";
import { parseEvent } from "../../core/cook/parse.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import type { Acknowledged, BeginMessage, Begun, OrderMessage, Pantry } from "../../core/sync/protocol.ts";

/** Whether the server is there. `lost`: it was, or should be; orders wait for it. */
export type LinkState = "connecting" | "joined" | "lost";

/** What the server tells. */
export interface LinkHandlers {
  readonly onSnapshot: (session: string | null, events: readonly MealEvent[], serverNow: number) => void;
  readonly onEvents: (session: string, events: readonly MealEvent[]) => void;
}

/** The part of the line that the household log goes over; what it carries is read by whoever keeps that log. */
export interface HouseLine {
  readonly state: ReadonlySignal<LinkState>;
  /** Rejects when no answer comes. */
  readonly ask: (event: "house" | "house-order", payload: unknown) => Promise<unknown>;
  /** @returns what stops it */
  readonly onEvents: (told: (value: unknown) => void) => () => void;
}

/** The line to the server. */
export interface ServerLink {
  readonly state: ReadonlySignal<LinkState>;
  /** Rejects when no answer comes: the order is still pending then. */
  readonly send: (message: OrderMessage) => Promise<Acknowledged>;
  readonly begin: (message: BeginMessage) => Promise<Begun>;
  /** Joins anew, for what was told meanwhile and for the server's time: a line may sleep without knowing it. */
  readonly rejoin: () => void;
  readonly house: HouseLine;
  /** Rejects when the server is not there. */
  readonly pantry: () => Promise<Pantry>;
  readonly close: () => void;
}

/** An answer that takes longer is taken for a lost line. */
const answerMs = 5000;

/** Opens the line. It joins again by itself; a snapshot comes with every join. */
export function openLink(handlers: LinkHandlers): ServerLink {
  const socket = io({ reconnectionDelay: 150, reconnectionDelayMax: 2000, timeout: 4000 });
  const state = signal<LinkState>("connecting");
  socket.on("connect", () => {
    state.value = "joined";
  });
  socket.on("disconnect", () => {
    state.value = "lost";
  });
  socket.on("connect_error", () => {
    state.value = "lost";
  });
  socket.on("snapshot", (value: unknown) => {
    const { session, events, serverNow } = readBatch(value);
    handlers.onSnapshot(session, events, serverNow);
  });
  socket.on("events", (value: unknown) => {
    const { session, events } = readBatch(value);
    if (session !== null) handlers.onEvents(session, events);
  });
  return {
    state,
    send: (message) => socket.timeout(answerMs).emitWithAck("order", message) as Promise<Acknowledged>,
    begin: (message) => socket.timeout(answerMs).emitWithAck("begin", message) as Promise<Begun>,
    rejoin: () => {
      socket.disconnect().connect();
    },
    house: houseLine(socket, state),
    pantry: readPantry,
    close: () => {
      socket.close();
    },
  };
}

const houseLine = (socket: Socket, state: ReadonlySignal<LinkState>): HouseLine => ({
  state,
  ask: (event, payload) => socket.timeout(answerMs).emitWithAck(event, payload) as Promise<unknown>,
  onEvents: (told) => {
    socket.on("house-events", told);
    return () => void socket.off("house-events", told);
  },
});

async function readPantry(): Promise<Pantry> {
  const answer = await fetch("/api/meals");
  if (!answer.ok) throw new Error(`the server answered ${answer.status} for the meals`);
  // Our own server's shape, checked by its tests; the page shows it and decides nothing by it.
  return (await answer.json()) as Pantry;
}

interface Batch {
  readonly session: string | null;
  readonly events: readonly MealEvent[];
  readonly serverNow: number;
}

function readBatch(value: unknown): Batch {
  const { session, events, serverNow }: { session?: unknown; events?: unknown; serverNow?: unknown } =
    typeof value === "object" && value !== null ? value : {};
  const parsed = Array.isArray(events) ? events.map(parseEvent) : [];
  return {
    session: typeof session === "string" ? session : null,
    events: parsed.flatMap((event) => (event.ok ? [event.value] : [])),
    serverNow: typeof serverNow === "number" ? serverNow : Date.now(),
  };
}
