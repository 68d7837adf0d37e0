import type { Page } from "playwright-core";
import { resample } from "../../../core/speech/resample.ts";
import { listeningRate, toInt16 } from "../../../core/speech/samples.ts";
import { loudness } from "../../../core/speech/loudness.ts";
import { activeLevel } from "../../voice/active-level.ts";
import type { Voice } from "../../voice/synthetic-voices.ts";
import { spokenSamples } from "./spoken-track.ts";

type InRoom = {
  speakAt?: (base64: string, gain: number) => Promise<void>;
  fillRoom?: (base64: string, gain: number) => void;
};

const micRate = 48_000;

/**
 * Gives a page a microphone in a room of which the test says how loud it is, and how loud who speaks in it.
 * A stream of Web Audio stands in place of the device; all behind it is the real thing. Call it before the page loads.
 */
export async function installRoomMicrophone(page: Page): Promise<void> {
  await page.addInitScript(roomMicrophone);
}

/** Runs in the page. */
function roomMicrophone(): void {
  navigator.mediaDevices.getUserMedia = () => {
    const audio = new AudioContext({ sampleRate: 48_000 });
    const microphone = audio.createMediaStreamDestination();
    const decoded = (base64: string, rate: number): AudioBuffer => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const samples = Float32Array.from(new Int16Array(bytes.buffer), (sample) => sample / 0x8000);
      const buffer = audio.createBuffer(1, samples.length, rate);
      buffer.copyToChannel(samples, 0);
      return buffer;
    };
    const play = (buffer: AudioBuffer, gain: number, loop: boolean): AudioBufferSourceNode => {
      const source = new AudioBufferSourceNode(audio, { buffer, loop });
      source.connect(new GainNode(audio, { gain })).connect(microphone);
      source.start();
      return source;
    };
    // A quiet room hisses faintly, and keeps the stream flowing between sentences.
    const hiss = audio.createBuffer(1, 96_000, 48_000);
    let seed = 1;
    const faint = Float32Array.from({ length: 96_000 }, () => {
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
      return (seed / 2 ** 31 - 1) * 1e-4;
    });
    hiss.copyToChannel(faint, 0);
    play(hiss, 1, true);
    let noise: AudioBufferSourceNode | null = null;
    const inRoom = globalThis as InRoom;
    inRoom.speakAt = (base64, gain) =>
      new Promise((resolve) => {
        play(decoded(base64, 48_000), gain, false).onended = () => resolve();
      });
    inRoom.fillRoom = (base64, gain) => {
      noise?.stop();
      noise = play(decoded(base64, 16_000), gain, true);
    };
    return Promise.resolve(microphone.stream);
  };
}

/** Says a sentence so that it arrives at this active level (ITU-T P.56), in dBFS; resolves when it has been said. */
export async function speakAt(page: Page, voice: Voice, sentence: string, levelDb: number): Promise<void> {
  const samples = await spokenSamples(voice, sentence);
  const gainDb = levelDb - activeLevel(resample(samples, micRate, listeningRate));
  await page.evaluate(([sound, gain]) => (globalThis as InRoom).speakAt?.(sound, gain), [
    inLetters(samples),
    10 ** (gainDb / 20),
  ] as const);
}

/** Fills the room with a noise (mono, 16 kHz) that goes on and on, at this level in dBFS. */
export async function fillRoom(page: Page, noise: Float32Array, levelDb: number): Promise<void> {
  const peak = noise.reduce((most, sample) => Math.max(most, Math.abs(sample)), 1e-6);
  const loud = noise.map((sample) => (sample * 0.9) / peak);
  await page.evaluate(([sound, gain]) => (globalThis as InRoom).fillRoom?.(sound, gain), [
    inLetters(loud),
    10 ** ((levelDb - loudness(loud)) / 20),
  ] as const);
}

/** Sound as a page takes it: 16 bits, in letters. */
function inLetters(samples: Float32Array): string {
  const whole = toInt16(samples);
  return Buffer.from(whole.buffer, whole.byteOffset, whole.byteLength).toString("base64");
}
