import type { Clock } from "./clock.ts";
import type { Journal } from "./journal.ts";
import type { Speaking, Utterance } from "./speaker.ts";
import { outranks, speechQueue, type Priority } from "./speech-queue.ts";

/** How it went: heard, only readable, or stopped. */
export type SayEnd = "said" | "shown" | "stopped";

/** One text in the queue. */
export interface Item {
  readonly id: number;
  readonly text: string;
  readonly priority: Priority;
  /** Null: the rate that is set when its turn comes. */
  readonly rate: number | null;
  /** 0 to 1, on top of the set volume. */
  readonly volume: number;
  readonly settle: (end: SayEnd) => void;
}

/** Says one text after the other. */
export interface Talker {
  readonly add: (item: Item) => void;
  readonly stop: () => void;
  /** The priority of what is being said now. */
  readonly speakingAt: () => Priority | null;
}

interface Turn {
  readonly item: Item;
  readonly speaking: Speaking;
  fate: "stop" | "repeat" | null;
}

/** What the talker uses and tells. */
export interface TalkerNeeds {
  readonly clock: Clock;
  readonly journal: Journal;
  readonly speak: (utterance: Utterance) => Speaking;
  /** The set rate and volume, asked for at each turn. */
  readonly settings: () => { readonly rate: number; readonly volume: number };
  readonly onTurn: (item: Item) => void;
  readonly onSilence: () => void;
}

/**
 * The more urgent goes first and cuts the less urgent short, which is then said again from its beginning: half a
 * sentence is no instruction.
 */
export function createTalker({ clock, journal, speak, settings, onTurn, onSilence }: TalkerNeeds): Talker {
  const queue = speechQueue<Item>();
  const state: { turn: Turn | null; working: boolean } = { turn: null, working: false };

  const takeTurn = async (item: Item): Promise<void> => {
    onTurn(item);
    const { rate, volume } = settings();
    const turn: Turn = { item, speaking: speak({ text: item.text, rate: item.rate ?? rate, volume: item.volume * volume }), fate: null };
    state.turn = turn;
    const end = await turn.speaking.ended;
    state.turn = null;
    onSilence();
    journal.note({ kind: end, text: item.text, at: clock.now() });
    if (end === "cut" && turn.fate === "repeat") queue.putBack(item);
    else item.settle(end === "cut" ? "stopped" : end);
  };
  const work = async (): Promise<void> => {
    if (state.working) return;
    state.working = true;
    for (let item = queue.take(); item !== undefined; item = queue.take()) await takeTurn(item);
    state.working = false;
  };
  const cut = (fate: "stop" | "repeat"): void => {
    if (state.turn === null) return;
    state.turn.fate = fate;
    state.turn.speaking.cut();
  };

  return {
    add: (item) => {
      queue.add(item);
      const turn = state.turn;
      if (turn !== null && turn.fate === null && outranks(item.priority, turn.item.priority)) cut("repeat");
      void work();
    },
    stop: () => {
      for (const item of queue.clear()) item.settle("stopped");
      cut("stop");
    },
    speakingAt: () => state.turn?.item.priority ?? null,
  };
}
