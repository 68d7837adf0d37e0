import type { ReadonlySignal } from "@preact/signals";
import type { RoomNoise } from "../../core/speech/room-noise.ts";
import type { ModelLoading } from "../voice/engine.ts";

/** What the microphone's end is doing. */
export interface EarState {
  /**
   * `waiting`: listens for the address. `open`: no address needed. `hearing`: somebody speaks.
   * `thinking`: the words are being read. `muted`: the caller itself speaks; only "stop" is heard.
   * `deaf`: a recording is being played; nothing is heard.
   */
  readonly kind:
    "off" | "loading" | "waiting" | "open" | "hearing" | "thinking" | "muted" | "deaf" | "trouble";
  /** In trouble: what is wrong and what to do. */
  readonly sentence: string | null;
  /** While loading: how far a model is that takes a while; null where nothing is known. */
  readonly loading: ModelLoading | null;
}

/** The microphone joined to the conversation. */
export interface Ear {
  readonly state: ReadonlySignal<EarState>;
  /** Loudness now, 0 to 1. */
  readonly level: ReadonlySignal<number>;
  /** What the recogniser thinks so far: shown, never acted on. */
  readonly partial: ReadonlySignal<string>;
  /** How loud the room is beside the cook's voice, while it listens; quiet else. */
  readonly room: ReadonlySignal<RoomNoise>;
  /** Loads the recogniser ahead of `start`, in silence. */
  readonly prepare: () => Promise<void>;
  /** Asks for the microphone and loads the recogniser; call it from a touch. */
  readonly start: () => Promise<void>;
  /** The next sentence needs no address. */
  readonly listenOnce: () => void;
  readonly stop: () => void;
}
