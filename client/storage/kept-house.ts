import type { HouseEvent } from "../../core/house/events.ts";
import { parseHouseEvent, parseHouseOrder } from "../../core/house/parse.ts";
import type { HouseOrderMessage } from "../../core/sync/protocol.ts";
import { parseJson, readItem } from "./kept-log.ts";

const logKey = "stovecall.house";
const prefix = "stovecall.house-order.";
const saidKey = "stovecall.house-said";

/** The household log as this device last saw it; empty where there is none or it cannot be trusted. */
export function readKeptHouse(): readonly HouseEvent[] {
  const value = parseJson(readItem(logKey) ?? "");
  if (!Array.isArray(value)) return [];
  const events = value.map(parseHouseEvent);
  const good = events.flatMap((event) => (event.ok ? [event.value] : []));
  return good.length === events.length ? good : [];
}

/** Keeps the log, so that a reload without the server still knows what is in the fridge. */
export const keepHouse = (events: readonly HouseEvent[]): void => write(logKey, events);

/** What this device has said of its reminders: a reload is no reason to say them again. */
export function readSaid(): readonly string[] {
  const value = parseJson(readItem(saidKey) ?? "");
  return Array.isArray(value) ? value.filter((one) => typeof one === "string") : [];
}

/** Keeps what was said. */
export const keepSaid = (keys: readonly string[]): void => write(saidKey, keys);

/** The orders about the house that the server has not answered yet, one key each: two pages never overwrite each other's. */
export function readPendingHouse(): readonly HouseOrderMessage[] {
  return storedNames()
    .flatMap(readOne)
    .toSorted((a, b) => a.at - b.at || a.id.localeCompare(b.id));
}

function readOne(name: string): readonly HouseOrderMessage[] {
  const value = parseJson(readItem(name) ?? "");
  if (typeof value !== "object" || value === null || !("order" in value)) return [];
  const { id, at } = { id: "", at: 0, ...value };
  const order = parseHouseOrder(value.order);
  return order.ok && typeof id === "string" && typeof at === "number" ? [{ id, at, order: order.value }] : [];
}

function storedNames(): readonly string[] {
  try {
    return Object.keys(localStorage).filter((name) => name.startsWith(prefix));
  } catch {
    return [];
  }
}

/** Keeps an order until the server has answered it. */
export const keepPendingHouse = (message: HouseOrderMessage): void => write(prefix + message.id, message);

/** Forgets an order that the server has answered. */
export function dropPendingHouse(id: string): void {
  try {
    localStorage.removeItem(prefix + id);
  } catch {
    // Nothing was kept, so nothing is left over.
  }
}

function write(name: string, value: unknown): void {
  try {
    localStorage.setItem(name, JSON.stringify(value));
  } catch {
    // A full or forbidden store costs only a reload without the server.
  }
}
