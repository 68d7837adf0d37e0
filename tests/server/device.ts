import { randomUUID } from "node:crypto";
import { io, type ManagerOptions, type Socket, type SocketOptions } from "socket.io-client";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import type { Order } from "../../core/cook/orders.ts";
import type { MealLog } from "../../core/cook/session.ts";
import type { Acknowledged, Appended, Begun, Snapshot } from "../../core/sync/protocol.ts";

/** A tablet without a screen: it keeps the log as the page does, and waits for things instead of sleeping. */
export class Device {
  readonly socket: Socket;
  session: string | null = null;
  log: MealLog = emptyLog;
  snapshots = 0;
  /** How often the server did not let it in, or was not there. */
  refusals = 0;
  readonly #waiting = new Set<() => void>();

  constructor(url: string, options: Partial<ManagerOptions & SocketOptions> = {}) {
    this.socket = io(url, { forceNew: true, reconnectionDelay: 50, reconnectionDelayMax: 200, ...options });
    this.socket.on("snapshot", (snapshot: Snapshot) => {
      this.session = snapshot.session;
      this.log = appendEvents(emptyLog, snapshot.events);
      this.snapshots += 1;
      this.#look();
    });
    this.socket.on("events", ({ session, events }: Appended) => {
      if (session === this.session) this.log = appendEvents(this.log, events);
      this.#look();
    });
    this.socket.on("connect_error", () => {
      this.refusals += 1;
      this.#look();
    });
    this.socket.on("disconnect", () => this.#look());
  }

  /** Resolves as soon as the condition holds; the test's own time limit ends a wait in vain. */
  until(condition: () => boolean): Promise<void> {
    return new Promise((resolve) => {
      const look = (): void => {
        if (!condition()) return;
        this.#waiting.delete(look);
        resolve();
      };
      this.#waiting.add(look);
      look();
    });
  }

  joined(): Promise<void> {
    return this.until(() => this.snapshots > 0);
  }

  begin(meal: string, serveAt: number | null = null): Promise<Begun> {
    return this.socket.emitWithAck("begin", {
      id: randomUUID(),
      meal,
      servings: {},
      serveAt,
    }) as Promise<Begun>;
  }

  order(order: Order, id: string = randomUUID()): Promise<Acknowledged> {
    const message = { session: this.session ?? "none", id, at: Date.now(), order };
    return this.socket.emitWithAck("order", message) as Promise<Acknowledged>;
  }

  send(event: string, payload: unknown): Promise<Acknowledged> {
    return this.socket.emitWithAck(event, payload) as Promise<Acknowledged>;
  }

  #look(): void {
    for (const look of [...this.#waiting]) look();
  }
}
