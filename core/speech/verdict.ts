/** What one utterance came to. */
export type Verdict =
  /** A sentence of the grammar, without the address. */
  | {
      readonly kind: "command";
      readonly words: readonly string[];
      /** 0 to 1, comparable only within one engine. */
      readonly confidence: number;
      /** Sentences that it may just as well have been, the likeliest first; mostly none. */
      readonly rivals: readonly (readonly string[])[];
      readonly addressed: boolean;
    }
  /** The address alone: somebody has turned to the caller and may now go on. */
  | { readonly kind: "address-only" }
  /** No command, and why: nothing but chatter, or too unlike a command to act on. */
  | { readonly kind: "none"; readonly why: "chatter" | "doubtful" };
