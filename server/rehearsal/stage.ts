import type { Cue } from "../../core/cook/calls.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import { callsNow } from "../../core/cook/calls-now.ts";
import { cuesAt } from "../../core/cook/cues.ts";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import { afterSaying, nothingSaid, toSay, type SaidCues } from "../../core/cook/said-cues.ts";
import type { MealLog, Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { explainPlan } from "../../core/talk/explain-plan.ts";
import { silentDialogue, type Dialogue, type Kitchen as Moment } from "../../core/talk/model.ts";
import { respond } from "../../core/talk/respond.ts";
import { beginWatch, lookAgain, saySlip, type DinnerWatch } from "../../core/talk/slip.ts";
import { instant, minutes, plus, seconds, type Instant, type Seconds } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { Kitchen } from "../kitchen/kitchen.ts";
import { MemoryMealStore } from "../store/memory-meal-store.ts";

/** One line of the conversation. */
export type Turn =
  | { readonly who: "cook"; readonly at: Instant; readonly said: string; readonly intent: string | null }
  | {
      readonly who: "caller";
      readonly at: Instant;
      readonly said: string;
      readonly how: "answer" | "unasked" | "ring" | "shown";
    }
  /** An order that the kitchen refused although the caller had accepted it. */
  | { readonly who: "kitchen"; readonly at: Instant; readonly said: string };

/** What the evening looks like at its moment. */
export interface View {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly log: MealLog;
  readonly now: Instant;
}

/**
 * A kitchen with a clock that is turned by hand: the server's own queue on a log in memory, and beside it one
 * device that says its cues and answers, as the page does.
 */
export class Stage {
  readonly #kitchen: Kitchen;
  readonly #tell: (turn: Turn) => void;
  #now: Instant;
  #ids = 0;
  readonly #cues: Cue[] = [];
  #log: MealLog = emptyLog;
  readonly #fresh: MealEvent[] = [];
  #dialogue: Dialogue = silentDialogue;
  #dinner: DinnerWatch | null = null;
  #said: SaidCues = nothingSaid;
  #quietUntil: Instant = instant(0);

  /** @param from when the evening begins, epoch ms on a clock without a time zone */
  constructor(meal: CookingMeal, from: Instant, serveAt: Instant | null, tell: (turn: Turn) => void) {
    this.#now = from;
    this.#tell = tell;
    const parts = {
      store: new MemoryMealStore(),
      meal: () => ok(meal),
      now: () => this.#now,
      newId: () => this.#newId(),
    };
    const kitchen = Kitchen.open(parts);
    if (!kitchen.ok) throw new Error(`a log in memory cannot fail to open: ${kitchen.error.code}`);
    this.#kitchen = kitchen.value;
    this.#kitchen.listen((news) => {
      // When the meal ends the kitchen forgets it; the evening's last state stays here.
      this.#fresh.push(...(news.type === "events" ? news.appended.events : news.snapshot.events));
    });
    const begun = this.#kitchen.begin({ id: this.#newId(), meal: meal.id, servings: {}, serveAt });
    if (!begun.ok) throw new Error(begun.sentence);
    this.#catchUp();
    this.#speakCues();
  }

  get now(): Instant {
    return this.#now;
  }

  /** All that was said unasked so far. */
  get cues(): readonly Cue[] {
    return this.#cues;
  }

  view(): View {
    const { session } = this.#log;
    if (session === null) throw new Error("the meal on a stage has begun with the stage");
    return { session, sheet: runSheetOf(session, this.#now), log: this.#log, now: this.#now };
  }

  /** What an answer depends on now; for a recording, what is worth listening for. */
  moment(): Moment {
    const { sheet, log, now } = this.view();
    const [dialogue, utteranceId] = [this.#dialogue, this.#newId()];
    return {
      log,
      sheet,
      now,
      utcOffsetMinutes: () => 0,
      dialogue,
      utteranceId,
      explain: explainPlan,
      household: null,
      foods: null,
    };
  }

  /** Lets time pass, second by second, until a moment. @returns what came up unasked on the way */
  pass(until: Instant): readonly Cue[] {
    const cues: Cue[] = [];
    while (this.#now < until) cues.push(...this.second());
    return cues;
  }

  /** One second: the server's tick, then what the device says unasked. */
  second(): readonly Cue[] {
    this.#now = plus(this.#now, seconds(1));
    this.#kitchen.tick();
    this.#catchUp();
    this.#speakOfDinner();
    return this.#speakCues();
  }

  /** The cook says something, and the caller answers. */
  say(words: string): void {
    const reply = respond(words, this.moment());
    this.#tell({ who: "cook", at: this.#now, said: words, intent: reply.intent?.type ?? null });
    this.#dialogue = reply.dialogue;
    for (const order of reply.orders) this.#order(order);
    for (const order of reply.voice) {
      if (order.type === "QuietFor") this.#quietUntil = plus(this.#now, minutes(order.minutes));
      if (order.type === "SpeakAgain") this.#quietUntil = this.#now;
    }
    this.#catchUp();
    if (reply.say === "") return;
    this.#tell({ who: "caller", at: this.#now, said: reply.say, how: "answer" });
    const told = this.#due().filter((cue) => reply.say.includes(cue.say));
    this.#said = afterSaying(this.#said, told, this.#now);
  }

  /** A recording in which no command was found. */
  heardNothing(file: string): void {
    this.#tell({ who: "cook", at: this.#now, said: `(nothing understood in ${file})`, intent: null });
  }

  #order(order: Parameters<Kitchen["order"]>[0]["order"]): void {
    const session = this.#kitchen.snapshot().session ?? "none";
    const answer = this.#kitchen.order({ session, id: this.#newId(), at: this.#now, order });
    if (!answer.ok) this.#tell({ who: "kitchen", at: this.#now, said: answer.sentence });
  }

  #catchUp(): void {
    this.#log = appendEvents(this.#log, this.#fresh.splice(0));
  }

  #due(): readonly Cue[] {
    const { session, sheet, now } = this.view();
    return toSay(cuesAt(session, sheet, now), this.#said, now);
  }

  #speakCues(): readonly Cue[] {
    const due = this.#due();
    this.#said = afterSaying(this.#said, due, this.#now);
    for (const cue of due) {
      const how = cue.call.kind === "ring" ? "ring" : this.#now < this.#quietUntil ? "shown" : "unasked";
      this.#tell({ who: "caller", at: this.#now, said: cue.say, how });
    }
    this.#cues.push(...due);
    return due;
  }

  /** Tells once when dinner slips. */
  #speakOfDinner(): void {
    const { session, sheet, now } = this.view();
    this.#dinner ??= beginWatch(session, sheet, now);
    const { watch, slip } = lookAgain(this.#dinner, session, sheet, now);
    this.#dinner = watch;
    if (slip === null) return;
    const how = now < this.#quietUntil ? "shown" : "unasked";
    this.#tell({
      who: "caller",
      at: now,
      said: saySlip(slip, session, sheet, { now, utcOffsetMinutes: () => 0 }),
      how,
    });
  }

  #newId(): string {
    this.#ids += 1;
    return `rehearsal-${this.#ids}`;
  }
}

/** What wants the cook most at the stage's moment. */
export function firstCall({ session, sheet, now }: View): ReturnType<typeof callsNow>[number] | null {
  return callsNow(session, sheet, now)[0] ?? null;
}

/** The middle of a range. */
export const likely = ({ low, high }: { readonly low: Seconds; readonly high: Seconds }): Seconds =>
  seconds(Math.round((low + high) / 2));
