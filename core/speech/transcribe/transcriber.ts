import type { Result } from "../../units/result.ts";

/** One utterance while it is written down, a token at a time, several drafts side by side. */
export type Writing = {
  /**
   * Adds one token to each draft.
   * @param parents for each draft the number of the draft before that it goes on from; [0] at first
   * @param tokens the token each goes on with; [first] at first
   * @returns for each draft the natural logarithm of the odds of every token that may come next, shape [tokens]
   */
  readonly step: (parents: readonly number[], tokens: readonly number[]) => Promise<readonly Float32Array[]>;
};

/** The tokens that a transcriber writes in. */
export type Tokens = {
  /** The text of each by its number; "▁" stands for a space. */
  readonly texts: readonly string[];
  /** The one that every text begins with, and the one that it ends with. */
  readonly first: number;
  readonly last: number;
};

/** One utterance, taken in; it can be written down more than once. */
export type TakenIn = { readonly write: () => Writing };

/** A model that writes down whatever is said to it. Calls come one after another. */
export type Transcriber = {
  /** Known once it is loaded. */
  readonly tokens: () => Tokens;
  /** Loads the model. Fails with one sentence that a cook can act on. */
  readonly load: () => Promise<Result<null, string>>;
  /** Takes in and writes nothing in particular: machine code is made better as it runs, and nobody waits for this. */
  readonly warmUp: () => Promise<void>;
  /** Takes a whole utterance: mono samples in [-1, 1] at 16 kHz, 0.3 to 12 s. */
  readonly takeIn: (utterance: Float32Array) => Promise<TakenIn>;
  /** Gives the model back; nothing may be called afterwards. */
  readonly free: () => Promise<void>;
};
