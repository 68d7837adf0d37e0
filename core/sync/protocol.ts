import { z } from "zod";
import type { MealEvent } from "../cook/events.ts";
import type { Order } from "../cook/orders.ts";
import type { Finding, Verdict } from "../diet/findings.ts";
import type { HouseEvent } from "../house/events.ts";
import type { HouseOrder } from "../house/orders.ts";
import { noteAnswers } from "../next-time/note.ts";
import { helpers } from "../plan/worker.ts";
import type { Mistake } from "../recipe/mistake.ts";
import { swapChoices } from "./meal-request.ts";

/** What the diets that hold for a meal say of it. */
export interface DietAnswer {
  /** Their names. */
  readonly diets: readonly string[];
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly notes: readonly string[];
  /** Why nothing can be told, one sentence; null: it can. */
  readonly problem: string | null;
}

/** A line of the start page: a meal that can be cooked. */
export interface MealCard {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly dishes: readonly {
    readonly id: string;
    readonly name: string;
    readonly servings: number;
    readonly of: string;
  }[];
  /** Minutes from midnight as in its file; null: as soon as possible. */
  readonly serveAt: number | null;
  /** From the first step to the table, planned without interruptions, in minutes. */
  readonly takesMinutes: number;
  /** The same with one helper, and with two. */
  readonly takesWithHelp: readonly number[];
  /** null: no diet holds for it. */
  readonly diet: DietAnswer | null;
  /** What can hurt by what is in its dishes, as sentences with their source; without those that the recipes tell. */
  readonly cautions: readonly string[];
  /** What was noted on evenings before for its dishes, as it is asked; left out: nothing. */
  readonly notes?: readonly { readonly key: string; readonly ask: string }[];
}

/** GET /api/meals */
export interface Pantry {
  readonly meals: readonly MealCard[];
  readonly mistakes: readonly Mistake[];
  /** The session that is being cooked; null when the kitchen is free. */
  readonly cooking: { readonly session: string; readonly meal: string } | null;
}

/** Client -> server, event "order", acknowledged with `Acknowledged`. `order` is checked by `parseOrder` in core/cook. */
export const orderMessage = z.strictObject({
  session: z.string().min(1).max(64),
  id: z.string().min(1).max(64),
  /** Epoch milliseconds at which the cook gave it; the server corrects what cannot be. */
  at: z.number().int().nonnegative(),
  order: z.looseObject({ type: z.string() }),
});

/** Client -> server, event "begin", acknowledged with `Begun`. */
export const beginMessage = z.strictObject({
  id: z.string().min(1).max(64),
  meal: z.string().min(1).max(100),
  servings: z.record(z.string(), z.number().int().min(1).max(100)),
  /** Epoch milliseconds; null: as soon as possible. */
  serveAt: z.number().int().nonnegative().nullable(),
  /** How many there are to help the cook from the start; left out: nobody. */
  helpers: z.number().int().min(0).max(helpers.length).default(0),
  /** What is to be taken for what, chosen on the meal's card. */
  swaps: swapChoices.default([]),
  /** What the cook has said to notes of evenings before, by their keys; the others are asked while cooking. */
  notes: z.record(z.string().max(410), z.enum(noteAnswers)).optional(),
});

export interface OrderMessage {
  readonly session: string;
  readonly id: string;
  readonly at: number;
  readonly order: Order;
}

export type BeginMessage = z.input<typeof beginMessage>;

export type Acknowledged =
  { readonly ok: true; readonly seq: number } | { readonly ok: false; readonly sentence: string };

export type Begun =
  { readonly ok: true; readonly session: string } | { readonly ok: false; readonly sentence: string };

/** Server -> client, event "snapshot": on every connect and whenever another meal begins or ends. */
export interface Snapshot {
  readonly session: string | null;
  readonly events: readonly MealEvent[];
  /** The server's clock, epoch ms, so that every device rings together. */
  readonly serverNow: number;
}

/** Server -> client, event "events": what has been appended to the session's log. */
export interface Appended {
  readonly session: string;
  readonly events: readonly MealEvent[];
}

/** Client -> server, event "house-order", acknowledged with `Acknowledged`. `order` is checked by `parseHouseOrder`. */
export const houseOrderMessage = orderMessage.omit({ session: true });

export interface HouseOrderMessage {
  readonly id: string;
  readonly at: number;
  readonly order: HouseOrder;
}

/** Client -> server, event "house", acknowledged with this: asked for at every join, by a page that shows the house. */
export interface HouseSnapshot {
  readonly events: readonly HouseEvent[];
  /** The server's clock, epoch ms. */
  readonly serverNow: number;
}

/** Server -> client, event "house-events": what has been appended to the household log. */
export interface HouseAppended {
  readonly events: readonly HouseEvent[];
}
