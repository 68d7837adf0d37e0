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
  /** Waited for before each text. */
  readonly floor: () => Promise<void>;
  readonly speak: (utterance: Utterance) => Speaking;
  /** The set rate and volume, asked for at each turn. */
  readonly settings: () => { readonly rate: number; readonly volume: number };
  readonly onTurn: (item: Item) => void;
  readonly onSilence: () => void;
}

class Turns implements Talker {
  readonly #needs: TalkerNeeds;
  readonly #queue = speechQueue<Item>();
  #turn: Turn | null = null;
  #working = false;

  constructor(needs: TalkerNeeds) {
    this.#needs = needs;
  }

  add(item: Item): void {
    this.#queue.add(item);
    const turn = this.#turn;
    if (turn !== null && turn.fate === null && outranks(item.priority, turn.item.priority))
      this.#cut("repeat");
    void this.#work();
  }

  stop(): void {
    for (const item of this.#queue.clear()) item.settle("stopped");
    this.#cut("stop");
  }

  speakingAt(): Priority | null {
    return this.#turn?.item.priority ?? null;
  }

  async #work(): Promise<void> {
    if (this.#working) return;
    this.#working = true;
    let item: Item | undefined;
    do {
      await this.#needs.floor();
      // Taken only after the wait: meanwhile something more urgent may have come, or all of it been called off.
      item = this.#queue.take();
      if (item !== undefined) await this.#takeTurn(item);
    } while (item !== undefined);
    this.#working = false;
  }

  async #takeTurn(item: Item): Promise<void> {
    const { speak, settings, journal, clock, onTurn, onSilence } = this.#needs;
    onTurn(item);
    const { rate, volume } = settings();
    const speaking = speak({ text: item.text, rate: item.rate ?? rate, volume: item.volume * volume });
    const turn: Turn = { item, speaking, fate: null };
    this.#turn = turn;
    const end = await speaking.ended;
    this.#turn = null;
    onSilence();
    journal.note({ kind: end, text: item.text, at: clock.now() });
    if (end === "cut" && turn.fate === "repeat") this.#queue.putBack(item);
    else item.settle(end === "cut" ? "stopped" : end);
  }

  #cut(fate: "stop" | "repeat"): void {
    if (this.#turn === null) return;
    this.#turn.fate = fate;
    this.#turn.speaking.cut();
  }
}

/**
 * The more urgent goes first and cuts the less urgent short, which is then said again from its beginning: half a
 * sentence is no instruction.
 */
export function createTalker(needs: TalkerNeeds): Talker {
  return new Turns(needs);
}
