import { decide, numbered } from "../cook/decide.ts";
import { appendEvents } from "../cook/fold.ts";
import type { Order } from "../cook/orders.ts";
import type { HouseOrder } from "../house/orders.ts";
import type { ListOrder } from "../shop/at-hand.ts";
import type { Refusal } from "../cook/refusal.ts";
import { sentence } from "../cook/refusal.ts";
import { runSheetOf } from "../cook/run-sheet.ts";
import type { MealLog, Session } from "../cook/session.ts";
import type { RunSheet } from "../plan/model.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import type { Intent } from "./intent.ts";
import type { Kitchen, Question, VoiceOrder } from "./model.ts";

/** What an intent comes to: what is said, what is ordered, and what is asked back. */
export interface Outcome {
  readonly say: string;
  readonly orders: readonly Order[];
  readonly voice: readonly VoiceOrder[];
  readonly house: readonly HouseOrder[];
  readonly list: readonly ListOrder[];
  readonly question: Question | null;
}

/** Whether the cook has already said yes to what destroys something. */
export type Consent = "wanted" | "given";

/** Says something and changes nothing. */
export const told = (say: string): Outcome => ({
  say,
  orders: [],
  voice: [],
  house: [],
  list: [],
  question: null,
});

/** Asks back; the prompt is what is said, after `before` where there is something to say first. */
export function asks(question: Question, before = ""): Outcome {
  return { ...told(before === "" ? question.prompt : `${before} ${question.prompt}`), question };
}

/** Asks for the rest of a half sentence. */
export const asksFor = (intent: Intent, prompt: string): Outcome => asks({ kind: "missing", intent, prompt });

/** Asks for a yes before it is done. */
export const asksLeave = (intent: Intent, prompt: string): Outcome =>
  asks({ kind: "confirm", intent, prompt });

/** A name for the command of one order of an utterance. */
export const commandId = (utteranceId: string, index: number): string => `${utteranceId}-${index}`;

/** The log as it will be once the orders are carried out here and now, or the first refusal. */
export function after(kitchen: Kitchen, orders: readonly Order[]): Result<MealLog, Refusal> {
  let log = kitchen.log;
  for (const [index, order] of orders.entries()) {
    const command = { id: commandId(kitchen.utteranceId, index), at: kitchen.now, order };
    const decision = decide(command, log);
    if (!decision.ok) return err(decision.error);
    log = appendEvents(log, numbered(command, log, decision.value));
  }
  return ok(log);
}

/** The state of an evening at a moment: what answers are read from. */
export interface Scene {
  readonly session: Session;
  readonly sheet: RunSheet;
}

/** The scene of a log; null before a meal has begun. */
export function sceneOf(log: MealLog, kitchen: Kitchen): Scene | null {
  const { session } = log;
  if (session === null) return null;
  const known = log === kitchen.log ? kitchen.sheet : null;
  return { session, sheet: known ?? runSheetOf(session, kitchen.now) };
}

/**
 * Gives orders, tried out first on a copy of the log: `say` reports what they truly bring about,
 * and a refusal is said instead, with nothing ordered.
 */
export function ordered(kitchen: Kitchen, orders: readonly Order[], say: (scene: Scene) => string): Outcome {
  const tried = after(kitchen, orders);
  if (!tried.ok) return told(sentence(tried.error));
  const scene = sceneOf(tried.value, kitchen);
  return { ...told(scene === null ? "Done." : say(scene)), orders };
}
