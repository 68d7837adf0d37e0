import type { Result } from "../units/result.ts";
import type { Grammar } from "./grammar.ts";
import type { Verdict } from "./verdict.ts";

/**
 * How much of a sentence must be there before it counts.
 * - addressed: only after the address ("listen kitchen, next step").
 * - open: with or without the address.
 * - stop-only: as addressed, and a few sentences without it; so is heard while the caller itself speaks.
 */
export type ListeningMode = "addressed" | "open" | "stop-only";

/** What an engine listens for: a grammar, the address it may come after, and how strictly. */
export type ListenFor = {
  readonly grammar: Grammar;
  readonly address: string | null;
  readonly mode: ListeningMode;
  /** In mode "stop-only", what needs no address; empty in the others. */
  readonly stopSentences: readonly string[];
};

/** What an utterance would come to if a pause were its end. */
export type Foreseen = {
  /** As they would be judged now, the address before them; empty where nothing is known for certain. */
  readonly words: readonly string[];
  /** Whether all that was said can have been heard: in noise a soft ending may be taken for the pause. */
  readonly isAll: boolean;
};

/**
 * What listens, whichever engine is behind it. Calls come one after another: a caller waits for each promise before the
 * next call. `accept` opens an utterance where none is open; `end` closes it.
 */
export type Recogniser = {
  /** Loads what is needed. Fails with one sentence that a cook can act on. */
  readonly load: () => Promise<Result<null, string>>;
  /** Resolves when all that only makes it better is there too, or is known not to come; it listens before. */
  readonly whole: () => Promise<void>;
  /** Listens for something else from the next utterance on; an open one is dropped. Fails with one sentence. */
  readonly setGrammar: (listenFor: ListenFor) => Promise<Result<null, string>>;
  /** Takes samples at 16 kHz, mono, in [-1, 1], 10 to 100 ms at a time. */
  readonly accept: (samples: Float32Array) => void;
  /**
   * A louder voice may have begun so many samples ago, in the open utterance: what came before may be somebody else's.
   * An engine that cannot hear again may pass over it.
   */
  readonly mayBegin: (samplesAgo: number) => void;
  /** The words so far, as far as they are known. They change from call to call: show them, never act on them. */
  readonly partial: () => readonly string[];
  /**
   * Whoever speaks may have ended: thinks about all that was said so far.
   * @param pause any number that tells this pause from the one before; asked again about the same, it has the answer
   */
  readonly anticipate: (pause: number) => Promise<Foreseen>;
  /** It was a pause only: whatever is still being thought about it is idle now. */
  readonly goOn: () => void;
  /**
   * Ends the utterance and says what it came to; chatter where none was open.
   * @param pause the one that it ended in, if that was thought about; null where it was cut off
   */
  readonly end: (pause: number | null) => Promise<Verdict>;
  /** Forgets what was learnt of voice and microphone; the grammar stays. */
  readonly forget: () => Promise<void>;
  /** Gives the engines back; nothing may be called afterwards. */
  readonly free: () => void;
};
