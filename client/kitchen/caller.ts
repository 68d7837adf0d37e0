import { computed, signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { Call } from "../../core/cook/calls.ts";
import { callsNow } from "../../core/cook/calls-now.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import type { Intent } from "../../core/talk/intent.ts";
import type { Dialogue, Kitchen, Reply, VoiceOrder } from "../../core/talk/model.ts";
import { silentDialogue } from "../../core/talk/model.ts";
import { respond, respondTo } from "../../core/talk/respond.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import { minutes, plus } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Sound } from "../sound/player.ts";
import type { Clock } from "./clock.ts";
import { sayCues } from "./cue-loop.ts";
import type { MealStore } from "./meal-store.ts";
import { ringingCount, ringTimers } from "./rings.ts";

/** One line of the conversation, as it is shown. */
export interface Line {
  readonly id: string;
  readonly who: "cook" | "caller";
  readonly text: string;
  readonly at: Instant;
  /** For the cook: spoken, typed or touched. For the caller: an answer, or unasked. */
  readonly how: "voice" | "typed" | "touch" | "answer" | "unasked";
  /** What the cook's words were taken for; null where they were not understood, or for the caller. */
  readonly understood: string | null;
}

/** The conversation on this device. */
export interface Caller {
  /** The last two hundred lines, the newest last. */
  readonly lines: ReadonlySignal<readonly Line[]>;
  readonly dialogue: ReadonlySignal<Dialogue>;
  /** All that wants the cook now, the most pressing first; empty before a meal. */
  readonly calls: ReadonlySignal<readonly Call[]>;
  /** Until when the caller keeps unasked things to the screen; null: it speaks. */
  readonly quietUntil: ReadonlySignal<Instant | null>;
  /** What is worth listening for at this moment. */
  readonly grammar: ReadonlySignal<Grammar>;
  readonly hear: (text: string, how: "voice" | "typed") => Reply;
  /** A touch means the same as a sentence: `words` is what it stands for. */
  readonly touch: (intent: Intent, words: string) => Reply;
  /** Says something that is no answer: a refusal of the server's, a trouble of the microphone's. */
  readonly tell: (sentence: string) => void;
  readonly close: () => void;
}

const mostLines = 200;

/** Puts clock, meal and sound together into a conversation. */
export function createCaller(clock: Clock, store: MealStore, sound: Sound): Caller {
  const lines = signal<readonly Line[]>([]);
  const dialogue = signal<Dialogue>(silentDialogue);
  const quietUntil = signal<Instant | null>(null);

  const kitchenAt = (now: Instant): Kitchen => ({
    log: store.log.value,
    sheet: store.sheet.value,
    now,
    utcOffsetMinutes: clock.utcOffsetMinutes(),
    dialogue: dialogue.value,
    utteranceId: crypto.randomUUID(),
  });
  const write = (line: Omit<Line, "id" | "at">): void => {
    lines.value = [...lines.value, { ...line, id: crypto.randomUUID(), at: clock.read() }].slice(-mostLines);
  };
  const isRinging = computed(() => ringingCount(store.session.value, clock) > 0);
  const isQuiet = (): boolean => quietUntil.value !== null && quietUntil.value > clock.read();

  const cueLoop = sayCues(clock, store, sound, (text, cue) => {
    write({ who: "caller", text, how: "unasked", understood: null });
    if (cue.call.kind === "ring") void sound.say(text, { priority: "ring" });
    else if (!isQuiet()) void sound.say(text, { priority: "cue" });
  });
  const stopRinging = ringTimers(clock, store, sound);

  function act(reply: Reply): Reply {
    dialogue.value = reply.dialogue;
    store.give(reply.orders);
    reply.voice.forEach(obey);
    if (reply.say === "") return reply;
    write({ who: "caller", text: reply.say, how: "answer", understood: null });
    cueLoop.told(reply.say);
    void sound.say(reply.say, { priority: "answer" });
    return reply;
  }

  function obey(order: VoiceOrder): void {
    switch (order.type) {
      case "Louder":
        sound.louder();
        return;
      case "Softer":
        sound.softer();
        return;
      case "Slower":
        sound.slower();
        return;
      case "Faster":
        sound.faster();
        return;
      case "QuietFor":
        quietUntil.value = plus(clock.read(), minutes(order.minutes));
        return;
      case "SpeakAgain":
        quietUntil.value = null;
        return;
      case "StopTalking":
        sound.stopTalking();
    }
  }

  return {
    lines,
    dialogue,
    quietUntil,
    calls: computed(() => {
      const [session, sheet] = [store.session.value, store.sheet.value];
      return session === null || sheet === null ? [] : callsNow(session, sheet, clock.now.value);
    }),
    // What can be said changes with the meal, the open question and the rings, not with every second.
    grammar: computed(() => {
      void isRinging.value;
      return grammarFor(kitchenAt(clock.now.peek()));
    }),
    hear: (text, how) => {
      const reply = respond(text, kitchenAt(clock.read()));
      write({ who: "cook", text, how, understood: reply.dialogue.lastUnderstood });
      return act(reply);
    },
    touch: (intent, words) => {
      const reply = respondTo(intent, kitchenAt(clock.read()));
      write({ who: "cook", text: words, how: "touch", understood: reply.dialogue.lastUnderstood });
      return act(reply);
    },
    tell: (sentence) => {
      write({ who: "caller", text: sentence, how: "unasked", understood: null });
      void sound.say(sentence, { priority: "answer" });
    },
    close: () => {
      cueLoop.close();
      stopRinging();
    },
  };
}
