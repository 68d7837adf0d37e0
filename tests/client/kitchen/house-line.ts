import { signal } from "@preact/signals";
import type { HouseLine, LinkState } from "../../../client/kitchen/server-link.ts";
import { instant } from "../../../core/units/quantity.ts";
import type { HouseOrderMessage } from "../../../core/sync/protocol.ts";
import { Household } from "../../../server/kitchen/household.ts";
import { MemoryHouseStore } from "../../../server/store/memory-house-store.ts";

/** A real house behind a line that the test cuts and joins by hand. */
export interface HandLine {
  readonly line: HouseLine;
  readonly household: Household;
  readonly cut: () => void;
  readonly join: () => void;
  /** How many orders went over it. */
  readonly sent: () => number;
}

/** @param now the server's clock */
export function handLine(now: () => number): HandLine {
  let ids = 0;
  const opened = Household.open({
    store: new MemoryHouseStore(),
    now: () => instant(now()),
    newId: () => `s${(ids += 1)}`,
  });
  if (!opened.ok) throw new Error(opened.error.code);
  const household = opened.value;
  const state = signal<LinkState>("connecting");
  let sent = 0;
  return {
    household,
    cut: () => (state.value = "lost"),
    join: () => (state.value = "joined"),
    sent: () => sent,
    line: {
      state,
      ask: async (event, payload) => {
        if (state.value !== "joined") throw new Error("nobody there");
        // As it would look after the wire.
        const carried: unknown = JSON.parse(JSON.stringify(payload));
        if (event === "house") return household.snapshot();
        sent += 1;
        return household.order(carried as HouseOrderMessage);
      },
      onEvents: (told) =>
        household.listen((appended) => {
          if (state.value === "joined") told(JSON.parse(JSON.stringify(appended)));
        }),
    },
  };
}

/** A browser's store in memory. */
export class Shelf {
  [name: string]: unknown;
  getItem(name: string): string | null {
    return Object.hasOwn(this, name) ? String(this[name]) : null;
  }
  setItem(name: string, value: string): void {
    this[name] = value;
  }
  removeItem(name: string): void {
    Reflect.deleteProperty(this, name);
  }
}
