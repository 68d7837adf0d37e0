/**
 * A phrase as the phrasebook writes it: plain words, or a pattern over phrases.
 * `text` in "words" is one or more words as a cook says them, numbers spelt out
 * ("set a timer for twelve minutes"); case and punctuation are ignored.
 */
export type Phrase =
  | { readonly kind: "words"; readonly text: string }
  | { readonly kind: "sequence"; readonly of: readonly Phrase[] }
  | { readonly kind: "choice"; readonly of: readonly Phrase[] }
  | { readonly kind: "optional"; readonly of: Phrase }
  | { readonly kind: "rule"; readonly name: string };

/**
 * All that may be said at one moment: named rules and the one a sentence starts from.
 * Rules must not refer to themselves, directly or in a circle; `checkGrammar` says where they do.
 */
export type Grammar = {
  readonly rules: ReadonlyMap<string, Phrase>;
  readonly root: string;
};
