import type { ToRecogniser } from "../../core/speech/recogniser-messages.ts";

/** A recogniser at the other end of messages, in a worker or in the page. */
export type EngineLink = {
  readonly post: (message: ToRecogniser, transfer: readonly Transferable[]) => void;
  readonly close: () => void;
};

/** Which engine listens. */
export type EngineChoice =
  | { readonly kind: "embedded" }
  /** A Vosk model that our server offers, its address and the hash that versions it. */
  | { readonly kind: "vosk"; readonly modelUrl: string };
