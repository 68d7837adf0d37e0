import type { GrammarChange } from "./grammar-change.ts";
import type { ListenWhen } from "./hearing.ts";
import type { HeardEvent, HearingEvent } from "./hearing-event.ts";
import type { HandOut } from "./misheard/sound-to-hand-out.ts";
import type { ListenFor } from "./recogniser.ts";
import type { EarTuning } from "./tuning.ts";

/** What the page tells the recogniser's worker. */
export type ToRecogniser =
  /** Load engine and model from below this address (ends with a slash). */
  | { readonly kind: "load"; readonly base: string }
  /**
   * Take sound from this port (transferred): each message is one Float32Array of mono samples in [-1, 1] at `rate`.
   * A port given before is closed, and the stream begins anew.
   */
  | { readonly kind: "connect"; readonly port: MessagePortLike; readonly rate: number }
  /** From the grammar before to that of every "listen-for" from here on. By itself it changes nothing that is heard. */
  | { readonly kind: "grammar"; readonly change: GrammarChange }
  | { readonly kind: "listen-for"; readonly how: Omit<ListenFor, "grammar">; readonly when: ListenWhen }
  /** Suits the ear to the cook from here on; kept over a new stream. */
  | { readonly kind: "tune"; readonly tuning: EarTuning }
  /** Whether the sound of sentences that may be misheard is handed out with them; it never is before this. */
  | { readonly kind: "hand-out"; readonly sounds: HandOut }
  /** Sound from the page itself, for a browser without a port from its worklet. The buffer is transferred. */
  | { readonly kind: "audio"; readonly samples: Float32Array; readonly rate: number }
  /** Forget the stream so far; the grammar stays. */
  | { readonly kind: "reset" }
  /** Free the engine; nothing may follow. */
  | { readonly kind: "close" };

/** What the recogniser's worker tells the page. */
export type FromRecogniser =
  | { readonly kind: "loaded" }
  /** Loading failed for good; the sentence is for the cook. */
  | { readonly kind: "failed"; readonly sentence: string }
  | Exclude<HearingEvent, HeardEvent>
  /** With it, how long ago the utterance began, in ms; on a slow machine sound is waited on. */
  | (HeardEvent & { readonly beganAgoMs: number });

/** The part of a browser's MessagePort that the pump uses; core knows no DOM. */
export type MessagePortLike = {
  addEventListener(kind: "message", heard: (event: { readonly data: unknown }) => void): void;
  /** Begins delivery, which `addEventListener` alone does not. */
  start(): void;
  close(): void;
};
