import { Howl, Howler } from "howler";
import type { AudioOutput, AudioState, Playing, Ringing } from "./audio-output.ts";

const fadeSeconds = 0.05;
/** How long a decoded sentence may take to begin: longer, and it never will. */
const startLimitMs = 2_000;

/** `data:` instead of `blob:`: Howler decodes it without a request, so no policy of the page stands in the way. */
function dataUri(wav: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < wav.length; at += 8192) binary += String.fromCharCode(...wav.subarray(at, at + 8192));
  return `data:audio/wav;base64,${btoa(binary)}`;
}

function stateOf(context: AudioContext | undefined): AudioState {
  if (context === undefined || !Howler.usingWebAudio) return "unavailable";
  return context.state === "running" ? "ready" : "locked";
}

/**
 * When a moment of the wall clock comes round on the audio clock. `getOutputTimestamp` names the sample that is
 * leaving the loudspeaker now, so the device's own delay is in the sum.
 */
function audioTime(context: AudioContext, atEpochMs: number): number {
  const waitMs = Math.min(1_000, Math.max(0, atEpochMs - Date.now()));
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  const heardNow = performanceTime > 0 ? contextTime + (performance.now() - performanceTime) / 1000 : context.currentTime;
  return Math.max(context.currentTime, heardNow + waitMs / 1000);
}

function bufferOf(context: AudioContext, samples: Float32Array, lengthMs: number): AudioBuffer {
  const length = Math.max(samples.length, Math.round((lengthMs / 1000) * context.sampleRate));
  const buffer = context.createBuffer(1, length, context.sampleRate);
  buffer.getChannelData(0).set(samples);
  return buffer;
}

function playSpeech(wav: Uint8Array, volume: number, onStart: () => void): Playing {
  let finish: (how: "ended" | "stopped" | "failed") => void = () => undefined;
  const ended = new Promise<"ended" | "stopped" | "failed">((resolve) => { finish = resolve; });
  const howl = new Howl({ src: [dataUri(wav)], format: ["wav"], html5: false, volume });
  let watchdog = setTimeout(() => { close("failed"); }, startLimitMs);
  const close = (how: "ended" | "stopped" | "failed"): void => {
    clearTimeout(watchdog);
    howl.off();
    // Unloading also takes the decoded sound out of Howler's own store, which would grow with every sentence.
    howl.unload();
    finish(how);
  };
  howl.on("play", () => {
    clearTimeout(watchdog);
    watchdog = setTimeout(() => { close("failed"); }, howl.duration() * 1000 + startLimitMs);
    onStart();
  });
  howl.on("end", () => { close("ended"); });
  howl.on("loaderror", () => { close("failed"); });
  howl.on("playerror", () => { close("failed"); });
  howl.play();
  return { ended, stop: () => { close("stopped"); } };
}

function startRing(context: AudioContext, bus: GainNode, samples: Float32Array, ring: Parameters<AudioOutput["startRing"]>[1]): Ringing {
  const source = context.createBufferSource();
  const level = context.createGain();
  source.buffer = bufferOf(context, samples, ring.periodMs);
  // The audio thread repeats it: no timer of a hidden page can make it late.
  source.loop = true;
  level.gain.value = ring.gain;
  source.connect(level).connect(bus);
  source.start(audioTime(context, ring.atEpochMs));
  return {
    loudness: (gain) => { level.gain.setTargetAtTime(gain, context.currentTime, fadeSeconds); },
    stop: () => {
      level.gain.setTargetAtTime(0, context.currentTime, fadeSeconds / 3);
      source.stop(context.currentTime + fadeSeconds * 2);
      source.onended = () => { source.disconnect(); level.disconnect(); };
    },
  };
}

const silentRing: Ringing = { loudness: () => undefined, stop: () => undefined };

/**
 * Sound through Howler and its audio context: Web Audio, so that the browser's echo canceller knows what is played.
 * One for the page.
 */
export function howlerOutput(): AudioOutput {
  // Howler would put the context to sleep after 30 s of silence, and the next ring would wait for it to wake.
  Howler.autoSuspend = false;
  Howler.autoUnlock = false;
  // The first call of a setter makes the context.
  Howler.volume(1);
  const context = Howler.usingWebAudio ? (Howler.ctx as AudioContext | undefined) : undefined;
  const bus = context?.createGain();
  bus?.connect(Howler.masterGain);
  const listeners = new Set<(state: AudioState) => void>();
  const state = (): AudioState => stateOf(context);
  context?.addEventListener("statechange", () => { for (const listener of listeners) listener(state()); });
  return {
    state,
    onState: (listener) => {
      listeners.add(listener);
      return () => { listeners.delete(listener); };
    },
    unlock: async () => {
      // Outside a tap resume() may stay pending for ever: nobody waits longer than half a second for it.
      await Promise.race([context?.resume().catch(() => undefined), new Promise((resolve) => setTimeout(resolve, 500))]);
      return state();
    },
    sampleRate: () => context?.sampleRate ?? 48_000,
    playSpeech,
    playTone: (samples, volume) => {
      if (context === undefined) return;
      const source = context.createBufferSource();
      const level = context.createGain();
      source.buffer = bufferOf(context, samples, 0);
      level.gain.value = volume;
      source.connect(level).connect(Howler.masterGain);
      source.onended = () => { source.disconnect(); level.disconnect(); };
      source.start();
    },
    startRing: (samples, ring) => (context === undefined || bus === undefined ? silentRing : startRing(context, bus, samples, ring)),
    ringBus: (gain) => { bus?.gain.setTargetAtTime(gain, context?.currentTime ?? 0, fadeSeconds); },
  };
}
