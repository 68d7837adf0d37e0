/**
 * "locked": the browser lets no page sound before the first tap (or has taken the sound away, as for a phone call).
 * "unavailable": there is no Web Audio here.
 */
export type AudioState = "locked" | "ready" | "unavailable";

/** A sound under way. */
export interface Playing {
  readonly ended: Promise<"ended" | "stopped" | "failed">;
  readonly stop: () => void;
}

/** A ring that repeats until stopped. */
export interface Ringing {
  /** @param gain 0 to 1 */
  readonly loudness: (gain: number) => void;
  readonly stop: () => void;
}

/** Everything audible goes through here: the browser's implementation is `howlerOutput`, tests bring their own. */
export interface AudioOutput {
  readonly state: () => AudioState;
  /** @returns a function that ends the listening */
  readonly onState: (listener: (state: AudioState) => void) => () => void;
  /** Call it from a tap or key press. */
  readonly unlock: () => Promise<AudioState>;
  /** In Hz; chimes are rendered for it. */
  readonly sampleRate: () => number;
  /** @param wav a whole WAV file @param onStart at the first sample */
  readonly playSpeech: (wav: Uint8Array, volume: number, onStart: () => void) => Playing;
  /** A short signal, once, at once. */
  readonly playTone: (samples: Float32Array, volume: number) => void;
  /**
   * @param samples one chime; it is repeated every `periodMs`
   * @param atEpochMs when the first stroke is to be heard; at most a second ahead, at once if past
   */
  readonly startRing: (
    samples: Float32Array,
    ring: { readonly periodMs: number; readonly gain: number; readonly atEpochMs: number },
  ) => Ringing;
  /** Loudness of all rings together, 0 to 1: turned down while speech plays. */
  readonly ringBus: (gain: number) => void;
}
