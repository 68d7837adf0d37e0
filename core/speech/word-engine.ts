import type { Result } from "../units/result.ts";
import type { ListenFor } from "./recogniser.ts";

/** One word as the engine placed it. */
export type HeardWord = {
  readonly word: string;
  /** Seconds from the first frame of the utterance. */
  readonly startS: number;
  readonly lengthS: number;
  /** The engine's own probability for the word, 0 to 1, comparable only within one engine. */
  readonly probability: number;
};

/** What an engine made of one utterance. Fillers and chatter are still in it. */
export type Hypothesis = { readonly words: readonly HeardWord[] };

/**
 * An engine that follows the sound as it comes and answers in words, each with a probability. Calls come one after another: a caller waits for each promise before the next call.
 * `accept` opens an utterance where none is open; `end` closes it, and answers without words where none was open.
 */
export type WordEngine = {
  /** Loads model and dictionary. Fails with one sentence that a cook can act on. */
  readonly load: () => Promise<Result<null, string>>;
  /** Listens for something else from the next utterance on; an open one is dropped. Fails with one sentence. */
  readonly setGrammar: (listenFor: ListenFor) => Promise<Result<null, string>>;
  /** Takes samples at 16 kHz, mono, in [-1, 1], 10 to 100 ms at a time. */
  readonly accept: (samples: Float32Array) => void;
  /** The words so far, fillers and all. They change from call to call: show them, never act on them. */
  readonly partial: () => readonly string[];
  /** Ends the utterance. */
  readonly end: () => Promise<Hypothesis>;
  /**
   * Hears a whole utterance once more, at leisure. It gains where the voice, the microphone or the room were new to
   * the engine; one that cannot gain answers without words.
   */
  readonly reconsider: (utterance: Float32Array) => Promise<Hypothesis>;
  /** Forgets what was learnt of voice and microphone; the grammar stays. */
  readonly forget: () => Promise<void>;
  /** Gives the engine back; nothing may be called afterwards. */
  readonly free: () => void;
};
