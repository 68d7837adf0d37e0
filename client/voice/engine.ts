import type { FromRecogniser, ToRecogniser } from "../../core/speech/recogniser-messages.ts";

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

/** How far a model is that takes a while to load. */
export type ModelLoading =
  /** The engine itself begins; a model that the browser has kept is read without another word. */
  | { readonly stage: "starting" }
  /** `ofBytes` is null where the server does not say how much there is. */
  | { readonly stage: "fetching"; readonly bytes: number; readonly ofBytes: number | null }
  /** All of it is here, and is unpacked and read. */
  | { readonly stage: "unpacking" };

/** What an engine tells the page: what every recogniser does, and how its loading goes. */
export type FromEngine =
  | FromRecogniser
  | { readonly kind: "loading"; readonly loading: ModelLoading }
  /** The engine that was chosen cannot be used, and another listens in its place. The sentence is for the cook. */
  | { readonly kind: "took-over"; readonly sentence: string };
