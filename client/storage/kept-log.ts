import type { MealEvent } from "../../core/cook/events.ts";
import { parseEvent } from "../../core/cook/parse.ts";

/** A session's log as this device last saw it, so that a reload without the server goes on cooking. */
export interface KeptLog {
  readonly session: string;
  readonly events: readonly MealEvent[];
}

const key = "stovecall.log";

/** Reads the kept log; null when there is none or it cannot be trusted. */
export function readKeptLog(): KeptLog | null {
  const text = readItem(key);
  if (text === null) return null;
  const value = parseJson(text);
  if (typeof value !== "object" || value === null || !("session" in value) || !("events" in value))
    return null;
  if (typeof value.session !== "string" || !Array.isArray(value.events)) return null;
  const events = value.events.map(parseEvent);
  const good = events.flatMap((event) => (event.ok ? [event.value] : []));
  return good.length === events.length ? { session: value.session, events: good } : null;
}

/** Keeps a log, or forgets the last one (null). Answers whether it could be written. */
export function keepLog(log: KeptLog | null): boolean {
  try {
    if (log === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(log));
    return true;
  } catch {
    // A full or forbidden store costs only the reload without a server; the server has the log.
    return false;
  }
}

/** An item of this browser's store; null when there is none or the store is forbidden. */
export function readItem(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** A parsed text; null when it is no JSON. */
export function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
