import { parseOrder } from "../../core/cook/parse.ts";
import type { OrderMessage } from "../../core/sync/protocol.ts";
import { parseJson, readItem } from "./kept-log.ts";

const prefix = "stovecall.order.";

/**
 * Orders that the server has not answered yet, one key each: two open pages never overwrite
 * each other's, and the server carries out a repeated id once.
 */
export function readPending(session: string): readonly OrderMessage[] {
  return storedNames()
    .flatMap((name) => readOne(name))
    .filter((message) => message.session === session)
    .toSorted((a, b) => a.at - b.at || a.id.localeCompare(b.id));
}

function readOne(name: string): readonly OrderMessage[] {
  const value = parseJson(readItem(name) ?? "");
  if (typeof value !== "object" || value === null || !("order" in value)) return [];
  const { session, id, at } = { session: "", id: "", at: 0, ...value };
  const order = parseOrder(value.order);
  if (!order.ok || typeof session !== "string" || typeof id !== "string" || typeof at !== "number") return [];
  return [{ session, id, at, order: order.value }];
}

function storedNames(): readonly string[] {
  try {
    return Object.keys(localStorage).filter((name) => name.startsWith(prefix));
  } catch {
    return [];
  }
}

/** Keeps an order until the server has answered it. */
export function keepPending(message: OrderMessage): void {
  try {
    localStorage.setItem(prefix + message.id, JSON.stringify(message));
  } catch {
    // Without a store the order still waits in memory; only a reload before the answer loses it.
  }
}

/** Forgets an order that the server has answered. */
export function dropPending(id: string): void {
  try {
    localStorage.removeItem(prefix + id);
  } catch {
    // Nothing was kept, so nothing is left over.
  }
}

/** Forgets the orders of every session but this one: that meal is over. */
export function dropOthers(session: string | null): void {
  for (const name of storedNames()) {
    const [message] = readOne(name);
    if (message === undefined || message.session !== session) dropPending(name.slice(prefix.length));
  }
}
