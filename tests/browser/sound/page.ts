import { Howler } from "howler";
import { httpSpeech } from "../../../client/sound/fetch-speech.ts";
import { toWav } from "../../../core/sound/wav-file.ts";
import { howlerOutput } from "../../../client/sound/howler-output.ts";
import { createSound, type Sound } from "../../../client/sound/player.ts";
import { createRingClock } from "../../../client/sound/ring-clock.ts";

/** What a test may ask of the page. */
export interface SoundBench {
  readonly sound: Sound;
  readonly captions: string[];
  readonly edges: string[];
  /** Starts to listen to all that is played; resolves with the wall clock (ms) of the first sample above the floor. */
  readonly firstSound: () => Promise<number>;
  /** Loudest sample played within the given time. */
  readonly loudest: (ms: number) => Promise<number>;
  /** Rings through the ring clock's worker; resolves with how late the first stroke left the loudspeaker, in ms. */
  readonly ringLateness: (inMs: number) => Promise<number>;
  /** A sentence waits for a sleeping context and is stopped in the moment that it wakes; resolves with what went wrong. */
  readonly stoppedAsItWakes: () => Promise<string[]>;
}

/** What Howler keeps to itself and a test must reach: its own state, and the sounds that it tells about it. */
interface HowlerInside {
  state: "running" | "suspended";
  readonly _howls: { _emit: (event: string, ...rest: unknown[]) => unknown }[];
}

const listener = `registerProcessor("listener", class extends AudioWorkletProcessor {
  process([[samples]]) {
    if (samples) for (let i = 0; i < samples.length; i += 1) {
      if (Math.abs(samples[i]) > 1e-4) { this.port.postMessage({ at: (currentFrame + i) / sampleRate, peak: Math.max(...samples.map(Math.abs)) }); break; }
    }
    return true;
  }
});`;

const captions: string[] = [];
const edges: string[] = [];
const output = howlerOutput();
const sound = createSound({
  output,
  fetchSpeech: httpSpeech("slt"),
  onCaption: ({ text }) => captions.push(text),
  onSpeaking: (edge) => edges.push(edge),
});
const context = Howler.ctx;

interface Heard {
  readonly at: number;
  readonly peak: number;
}

function listen(onHeard: (heard: Heard) => void): () => void {
  const node = new AudioWorkletNode(context, "listener");
  node.port.onmessage = (event: MessageEvent<Heard>) => {
    onHeard(event.data);
  };
  Howler.masterGain.connect(node);
  return () => {
    node.port.onmessage = null;
    Howler.masterGain.disconnect(node);
  };
}

function wallTime(contextTime: number): number {
  const stamp = context.getOutputTimestamp();
  const page = (stamp.performanceTime ?? 0) + (contextTime - (stamp.contextTime ?? 0)) * 1000;
  return Date.now() + page - performance.now();
}

function firstSound(): Promise<number> {
  return new Promise((resolve) => {
    const stop = listen(({ at }) => {
      stop();
      resolve(wallTime(at));
    });
  });
}

async function stoppedAsItWakes(): Promise<string[]> {
  const wrong: string[] = [];
  const note = ({ message }: ErrorEvent): number => wrong.push(message);
  addEventListener("error", note);
  const inside = Howler as unknown as HowlerInside;
  await context.suspend();
  inside.state = "suspended";
  const waiting = output.playSpeech(toWav(new Float32Array(3_200), 16_000), 1, () => undefined);
  const howl = inside._howls.at(-1);
  if (howl === undefined) throw new Error("no sound was made");
  const emit = howl._emit.bind(howl);
  howl._emit = (event, ...rest) => {
    const answer = emit(event, ...rest);
    if (event === "resume") waiting.stop();
    return answer;
  };
  if ((await waiting.ended) !== "stopped") wrong.push("it was not stopped");
  for (let tries = 0; tries < 50 && inside._howls.includes(howl); tries += 1)
    await new Promise((resolve) => setTimeout(resolve, 100));
  removeEventListener("error", note);
  if (inside._howls.length > 0) wrong.push("the sound was kept");
  return wrong;
}

await context.audioWorklet.addModule(URL.createObjectURL(new Blob([listener], { type: "text/javascript" })));
document.addEventListener("pointerdown", () => {
  void sound.unlock();
});

const bench: SoundBench = {
  sound,
  captions,
  edges,
  firstSound,
  stoppedAsItWakes,
  loudest: async (ms) => {
    let peak = 0;
    const stop = listen((heard) => {
      peak = Math.max(peak, heard.peak);
    });
    await new Promise((resolve) => setTimeout(resolve, ms));
    stop();
    return peak;
  },
  ringLateness: async (inMs) => {
    const due = Date.now() + inMs;
    const clock = createRingClock((id, at) => {
      sound.ring(id, 0, 1, at);
    });
    const heard = firstSound();
    clock.set("beans", due);
    const late = (await heard) - due;
    sound.stopRing("beans");
    clock.close();
    await new Promise((resolve) => setTimeout(resolve, 200));
    return late;
  },
};
Object.assign(globalThis, { bench });
