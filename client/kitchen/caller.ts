import { computed, signal } from "@preact/signals";
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { Call } from "../../core/cook/calls.ts";
import { callsNow } from "../../core/cook/calls-now.ts";
import type { Intent } from "../../core/talk/intent.ts";
import type { Dialogue, Kitchen, Reply } from "../../core/talk/model.ts";
import { silentDialogue } from "../../core/talk/model.ts";
import { respondTo } from "../../core/talk/respond-to.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Sound } from "../sound/player.ts";
import type { Clock } from "./clock.ts";
import { sayCues } from "./cue-loop.ts";
import type { CueLoop, OnCue, OnWoken } from "./cue-loop.ts";
import { lateWords } from "./late-words.ts";
import { lazyExplain } from "./lazy-explain.ts";
import type { LateVoice, StartWatches } from "./lazy-explain.ts";
import type { MealStore } from "./meal-store.ts";
import { kitchenAt, roomsWith, type Late, type Rooms } from "./rooms.ts";
import { ringingCount, ringTimers } from "./rings.ts";
import { obey } from "./voice-orders.ts";
import type { Words } from "./words.ts";

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

/** An answer, and the conversation as it was before. */
export interface Replied {
  readonly reply: Reply;
  readonly before: Dialogue;
}

/** What the ear needs of the conversation: what to listen for, and who takes what it hears. */
export interface Earshot {
  /** What is worth listening for at this moment. */
  readonly grammar: ReadonlySignal<Grammar>;
  readonly hear: (text: string) => Reply;
  /** Words that the ear heard, and what they may just as well have been, the likeliest first. */
  readonly hearUnsurely: (readings: readonly (readonly string[])[]) => Reply;
}

/** The conversation on this device. */
export interface Caller {
  /** The last two hundred lines, the newest last. */
  readonly lines: ReadonlySignal<readonly Line[]>;
  readonly dialogue: ReadonlySignal<Dialogue>;
  /** The last answer, to whatever was said, typed or touched. */
  readonly replied: ReadonlySignal<Replied | null>;
  /** All that wants the cook now, the most pressing first; empty before a meal. */
  readonly calls: ReadonlySignal<readonly Call[]>;
  /** Until when the caller keeps unasked things to the screen; null: it speaks. */
  readonly quietUntil: ReadonlySignal<Instant | null>;
  /** Fetches what understands words, until it is here. A touch does not need it. */
  readonly fetchWords: () => void;
  /** Whether words are understood already. */
  readonly hasWords: () => boolean;
  /** Rejects where what understands words cannot be fetched; the next call tries again. */
  readonly earshot: () => Promise<Earshot>;
  /** A typed sentence. One that comes before words are understood is kept until they are. */
  readonly hearTyped: (text: string) => void;
  /** A touch means the same as a sentence: `words` is what it stands for. */
  readonly touch: (intent: Intent, words: string) => Reply;
  /** Says something that is no answer: a refusal of the server's, a trouble of the microphone's. */
  readonly tell: (sentence: string) => void;
  /** Says something unasked that can wait: after all else, and only in writing where quiet was asked for. */
  readonly remark: (sentence: string) => void;
  readonly close: () => void;
}

const mostLines = 200;

type Signals = {
  readonly lines: Signal<readonly Line[]>;
  readonly dialogue: Signal<Dialogue>;
  readonly replied: Signal<Replied | null>;
  readonly quietUntil: Signal<Instant | null>;
};

const newSignals = (): Signals => ({
  lines: signal([]),
  dialogue: signal(silentDialogue),
  replied: signal(null),
  quietUntil: signal(null),
});

/** The watch over dinner and what is asked as a meal begins, which come after the page. */
const lateWatches =
  (rooms: Rooms, { lines, dialogue }: Signals, remark: Caller["remark"]): StartWatches =>
  ({ watchDinner, askOpenNotes, askStandIns, explain }) => {
    const { clock, store, foods } = rooms;
    const ask = (type: "AskNotes" | "OfferStandIn") => () =>
      explain({ type }, kitchenAt(clock.read(), rooms, dialogue.peek()), "wanted");
    const stops = [
      watchDinner(clock, store, lines, remark),
      askStandIns(clock, store, foods, dialogue, ask("OfferStandIn"), remark),
      askOpenNotes(clock, store, dialogue, ask("AskNotes"), remark),
    ];
    return () => stops.forEach((stop) => stop());
  };

/**
 * Puts clock, meal and sound together into a conversation.
 * @param loadWords fetches what understands words; called when it is first asked for
 * @param late what comes to the page after it stands; left out: it never comes
 */
export function createCaller(
  clock: Clock,
  store: MealStore,
  sound: Sound,
  loadWords: () => Promise<Words>,
  late: Partial<Late> = {},
): Caller {
  const rooms = roomsWith(clock, store, late);
  const signals = newSignals();
  const writer = writerOf(signals.lines, clock);
  const mayCue = mayCueIn(signals, clock);
  const teller = tellerOf(writer.unasked, sound, mayCue);
  const reasons = lazyExplain(lateWatches(rooms, signals, teller.remark));
  const cueLoop = sayCues(
    clock,
    store,
    sound,
    cueSayer(writer.unasked, sound, mayCue),
    sleepTeller(clock, reasons, teller.tell),
  );
  const stopRinging = ringTimers(clock, store, sound);
  const act = actorOf(signals, writer, cueLoop, { ...rooms, sound });
  const words = lateWords(loadWords, teller.tell);
  const moment = (): Kitchen => kitchenAt(clock.read(), rooms, signals.dialogue.value);
  const kitchen = (): Kitchen => ({ ...moment(), ...reasons.explaining() });

  return {
    ...signals,
    calls: callsOf(clock, store),
    fetchWords: words.fetchUntilHere,
    hasWords: words.areHere,
    earshot: async () => {
      const here = await words.fetch();
      return earshotOf(here, act, kitchen, grammarOf(here.grammarFor, rooms, signals.dialogue));
    },
    hearTyped: (text) => words.use(({ respond }) => act(respond(text, kitchen()), text, "typed")),
    touch: (intent, said) => act(respondTo(intent, said, kitchen()), said, "touch"),
    ...teller,
    close: () => [words.close, cueLoop.close, stopRinging, reasons.close].forEach((stop) => stop()),
  };
}

const mayCueIn =
  ({ quietUntil }: Signals, clock: Clock): (() => boolean) =>
  () =>
    quietUntil.value === null || quietUntil.value <= clock.read();

const earshotOf = (
  { respond, respondUnsure }: Words,
  act: Act,
  kitchen: () => Kitchen,
  grammar: Earshot["grammar"],
): Earshot => ({
  grammar,
  hear: (text) => act(respond(text, kitchen()), text, "voice"),
  hearUnsurely: (readings) => act(respondUnsure(readings, kitchen()), (readings[0] ?? []).join(" "), "voice"),
});

type Act = (reply: Reply, text: string, how: Line["how"]) => Reply;

/** Carries an answer out: writes both down, gives the orders and says it. */
function actorOf(
  { replied, dialogue, quietUntil }: Signals,
  { write }: Writer,
  cueLoop: CueLoop,
  { clock, store, sound, house }: Rooms & { readonly sound: Sound },
): Act {
  return (reply, text, how) => {
    write({ who: "cook", text, how, understood: reply.dialogue.lastUnderstood });
    replied.value = { reply, before: dialogue.peek() };
    dialogue.value = reply.dialogue;
    cueLoop.answer(reply.say, () => store.give(reply.orders));
    house.peek()?.give(reply.house, reply.list);
    for (const order of reply.voice) obey(order, sound, clock, quietUntil);
    if (reply.say === "") return reply;
    write({ who: "caller", text: reply.say, how: "answer", understood: null });
    void sound.say(reply.say, { priority: "answer" });
    return reply;
  };
}

/** Writes the conversation down. */
interface Writer {
  readonly write: (line: Omit<Line, "id" | "at">) => void;
  readonly unasked: (text: string) => void;
}

function writerOf(lines: Signal<readonly Line[]>, clock: Clock): Writer {
  const write: Writer["write"] = (line) => {
    lines.value = [...lines.value, { ...line, id: crypto.randomUUID(), at: clock.read() }].slice(-mostLines);
  };
  return {
    write,
    unasked: (text) => {
      write({ who: "caller", text, how: "unasked", understood: null });
    },
  };
}

function tellerOf(
  unasked: Writer["unasked"],
  sound: Sound,
  mayCue: () => boolean,
): Pick<Caller, "tell" | "remark"> {
  return {
    tell: (sentence) => {
      unasked(sentence);
      void sound.say(sentence, { priority: "answer" });
    },
    remark: (sentence) => {
      unasked(sentence);
      if (mayCue()) void sound.say(sentence, { priority: "cue" });
    },
  };
}

const cueSayer =
  (unasked: Writer["unasked"], sound: Sound, mayCue: () => boolean): OnCue =>
  (text, { call }) => {
    const isRing = call.kind === "ring";
    unasked(text);
    if (isRing || mayCue()) void sound.say(text, { priority: isRing ? "ring" : "cue" });
  };

const sleepTeller =
  ({ utcOffsetMinutes }: Clock, { afterSleep }: LateVoice, tell: Caller["tell"]): OnWoken =>
  (asleep, session, sheet, now) => {
    const said = afterSleep(asleep, session, sheet, { now, utcOffsetMinutes });
    if (said !== null) tell(said);
    return said !== null;
  };

const callsOf = (clock: Clock, store: MealStore): Caller["calls"] =>
  computed(() => {
    const [session, sheet] = [store.session.value, store.sheet.value];
    return session === null || sheet === null ? [] : callsNow(session, sheet, clock.now.value);
  });

/** What can be said changes with the meal, the open question and the rings, not with every second. */
function grammarOf(
  grammarFor: Words["grammarFor"],
  rooms: Rooms,
  dialogue: ReadonlySignal<Dialogue>,
): Earshot["grammar"] {
  const { clock, store } = rooms;
  const ringing = computed(() => ringingCount(store.session.value, clock));
  let known: Grammar | null = null;
  return computed(() => {
    // Read for its sake: a ring that starts or ends changes what can be said.
    const isQuiet = ringing.value === 0;
    const kitchen = kitchenAt(isQuiet ? clock.now.peek() : clock.read(), rooms, dialogue.value);
    // The very same where nothing in it is new: then nobody is told.
    known = grammarFor(kitchen, known);
    return known;
  });
}
