import { Howl, Howler } from "howler";
import type { AudioOutput, AudioState, Playing, Ringing } from "./audio-output.ts";

const fadeSeconds = 0.05;
/** How long a decoded sentence may take to begin: longer, and it never will. */
const startLimitMs = 2_000;
/** After this nothing that was promised of a sound is still to come: a decoding, a waking, a timer of the library. */
const settledMs = 1_000;

/** `data:` instead of `blob:`: Howler decodes it without a request, so no policy of the page stands in the way. */
function dataUri(wav: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < wav.length; at += 8192) binary += String.fromCharCode(...wav.subarray(at, at + 8192));
  return `data:audio/wav;base64,${btoa(binary)}`;
}

/**
 * When a moment of the wall clock comes round on the audio clock. `getOutputTimestamp` names the sample that is
 * leaving the loudspeaker now, so the device's own delay is in the sum.
 */
function audioTime(context: AudioContext, atEpochMs: number): number {
  const waitMs = Math.min(1_000, Math.max(0, atEpochMs - Date.now()));
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  const heardNow =
    performanceTime > 0 ? contextTime + (performance.now() - performanceTime) / 1000 : context.currentTime;
  return Math.max(context.currentTime, heardNow + waitMs / 1000);
}

function bufferOf(context: AudioContext, samples: Float32Array, lengthMs: number): AudioBuffer {
  const length = Math.max(samples.length, Math.round((lengthMs / 1000) * context.sampleRate));
  const buffer = context.createBuffer(1, length, context.sampleRate);
  buffer.getChannelData(0).set(samples);
  return buffer;
}

class HowlerSpeech implements Playing {
  readonly ended: Promise<"ended" | "stopped" | "failed">;
  readonly #howl: Howl;
  #finish: (how: "ended" | "stopped" | "failed") => void = () => undefined;
  #watchdog: ReturnType<typeof setTimeout>;

  constructor(wav: Uint8Array, volume: number, onStart: () => void) {
    this.ended = new Promise((resolve) => {
      this.#finish = resolve;
    });
    const howl = new Howl({ src: [dataUri(wav)], format: ["wav"], html5: false, volume });
    this.#howl = howl;
    this.#watchdog = this.#failAfter(startLimitMs);
    howl.on("play", () => {
      clearTimeout(this.#watchdog);
      this.#watchdog = this.#failAfter(howl.duration() * 1000 + startLimitMs);
      onStart();
    });
    howl.on("end", () => {
      this.#close("ended");
    });
    howl.on("loaderror", () => {
      this.#close("failed");
    });
    howl.on("playerror", () => {
      this.#close("failed");
    });
    howl.play();
  }

  stop(): void {
    this.#close("stopped");
  }

  #failAfter(ms: number): ReturnType<typeof setTimeout> {
    return setTimeout(() => {
      this.#close("failed");
    }, ms);
  }

  #close(how: "ended" | "stopped" | "failed"): void {
    clearTimeout(this.#watchdog);
    const howl = this.#howl;
    howl.off();
    howl.stop();
    // Unloading also takes the decoded sound out of Howler's own store, which would grow with every sentence.
    // Later: a context that has just woken may have promised the sound to play, and what is unloaded cannot.
    setTimeout(() => howl.unload(), settledMs);
    this.#finish(how);
  }
}

function playTone(context: AudioContext, samples: Float32Array, volume: number): void {
  const source = context.createBufferSource();
  const level = context.createGain();
  source.buffer = bufferOf(context, samples, 0);
  level.gain.value = volume;
  source.connect(level).connect(Howler.masterGain);
  source.onended = () => {
    source.disconnect();
    level.disconnect();
  };
  source.start();
}

function startRing(
  context: AudioContext,
  bus: GainNode,
  samples: Float32Array,
  ring: Parameters<AudioOutput["startRing"]>[1],
): Ringing {
  const source = context.createBufferSource();
  const level = context.createGain();
  source.buffer = bufferOf(context, samples, ring.periodMs);
  // The audio thread repeats it: no timer of a hidden page can make it late.
  source.loop = true;
  level.gain.value = ring.gain;
  source.connect(level).connect(bus);
  source.start(audioTime(context, ring.atEpochMs));
  return {
    loudness: (gain) => {
      level.gain.setTargetAtTime(gain, context.currentTime, fadeSeconds);
    },
    stop: () => {
      level.gain.setTargetAtTime(0, context.currentTime, fadeSeconds / 3);
      source.stop(context.currentTime + fadeSeconds * 2);
      source.onended = () => {
        source.disconnect();
        level.disconnect();
      };
    },
  };
}

const silentRing: Ringing = { loudness: () => undefined, stop: () => undefined };

/** Null where there is no Web Audio. */
function kitchenContext(): AudioContext | null {
  // Howler would put the context to sleep after 30 s of silence, and the next ring would wait for it to wake.
  Howler.autoSuspend = false;
  Howler.autoUnlock = false;
  // The first call of a setter makes the context.
  Howler.volume(1);
  return Howler.usingWebAudio ? Howler.ctx : null;
}

class HowlerOutput implements AudioOutput {
  readonly #context = kitchenContext();
  readonly #bus: GainNode | null;
  readonly #listeners = new Set<(state: AudioState) => void>();

  constructor() {
    this.#bus = this.#context?.createGain() ?? null;
    this.#bus?.connect(Howler.masterGain);
    this.#context?.addEventListener("statechange", () => {
      for (const listener of this.#listeners) listener(this.state());
    });
  }

  state(): AudioState {
    if (this.#context === null) return "unavailable";
    return this.#context.state === "running" ? "ready" : "locked";
  }

  onState(listener: (state: AudioState) => void): () => void {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  }

  async unlock(): Promise<AudioState> {
    // Outside a tap resume() may stay pending for ever: nobody waits longer than half a second for it.
    const limit = new Promise((resolve) => setTimeout(resolve, 500));
    await Promise.race([this.#context?.resume().catch(() => undefined), limit]);
    return this.state();
  }

  sampleRate(): number {
    return this.#context?.sampleRate ?? 48_000;
  }

  playSpeech(wav: Uint8Array, volume: number, onStart: () => void): Playing {
    return new HowlerSpeech(wav, volume, onStart);
  }

  playTone(samples: Float32Array, volume: number): void {
    if (this.#context !== null) playTone(this.#context, samples, volume);
  }

  startRing(samples: Float32Array, ring: Parameters<AudioOutput["startRing"]>[1]): Ringing {
    return this.#context === null || this.#bus === null
      ? silentRing
      : startRing(this.#context, this.#bus, samples, ring);
  }

  ringBus(gain: number): void {
    this.#bus?.gain.setTargetAtTime(gain, this.#bus.context.currentTime, fadeSeconds);
  }
}

/**
 * Sound through Howler and its audio context: Web Audio, so that the browser's echo canceller knows what is played.
 * One for the page.
 */
export function howlerOutput(): AudioOutput {
  return new HowlerOutput();
}
