import type { AudioOutput, AudioState, Playing } from "../../../client/sound/audio-output.ts";
import type { Clock } from "../../../client/sound/clock.ts";

/** A clock that stands still until it is turned. */
export function handClock(start = 1_000_000): Clock & { readonly turn: (ms: number) => Promise<void> } {
  let now = start;
  let waiting: { readonly at: number; readonly then: () => void }[] = [];
  return {
    now: () => now,
    after: (ms, then) => {
      const entry = { at: now + ms, then };
      waiting.push(entry);
      return () => {
        waiting = waiting.filter((other) => other !== entry);
      };
    },
    turn: async (ms) => {
      const end = now + ms;
      await settle();
      for (;;) {
        const next = waiting.filter((entry) => entry.at <= end).sort((a, b) => a.at - b.at)[0];
        if (next === undefined) break;
        waiting = waiting.filter((entry) => entry !== next);
        now = Math.max(now, next.at);
        next.then();
        await settle();
      }
      now = end;
    },
  };
}

/** Lets everything that is ready to run do so; no time passes. */
export async function settle(): Promise<void> {
  for (let i = 0; i < 20; i += 1) await Promise.resolve();
}

/** What a loudspeaker was told, in order; each speech plays until the test ends it. */
export interface FakeOutput extends AudioOutput {
  readonly told: string[];
  readonly endSpeech: (how?: "ended" | "failed") => void;
  readonly setState: (state: AudioState) => void;
  readonly bus: () => number;
}

/** A loudspeaker that writes down what it is told. The sound of a text is its own letters. */
export function fakeOutput(state: AudioState = "ready"): FakeOutput {
  const told: string[] = [];
  let now = state;
  let bus = 1;
  let finish: (how: "ended" | "stopped" | "failed") => void = () => undefined;
  const listeners = new Set<(state: AudioState) => void>();
  const setState = (next: AudioState): void => {
    now = next;
    for (const listener of listeners) listener(next);
  };
  return {
    told,
    state: () => now,
    setState,
    onState: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    unlock: () => {
      setState("ready");
      return Promise.resolve(now);
    },
    sampleRate: () => 8_000,
    playSpeech: (wav, volume, onStart): Playing => {
      const text = new TextDecoder().decode(wav);
      told.push(`speech ${text} ${volume.toFixed(2)}`);
      const ended = new Promise<"ended" | "stopped" | "failed">((resolve) => {
        finish = resolve;
      });
      const own = finish;
      onStart();
      return {
        ended,
        stop: () => {
          told.push(`stop ${text}`);
          own("stopped");
        },
      };
    },
    endSpeech: (how = "ended") => {
      finish(how);
    },
    playTone: (samples, volume) => {
      told.push(`tone ${samples.length > 0} ${volume.toFixed(2)}`);
    },
    startRing: (_samples, { gain, atEpochMs }) => {
      told.push(`ring at ${atEpochMs} gain ${gain.toFixed(2)}`);
      return {
        loudness: (next) => {
          told.push(`ring gain ${next.toFixed(2)}`);
        },
        stop: () => {
          told.push("ring stop");
        },
      };
    },
    ringBus: (gain) => {
      bus = gain;
    },
    bus: () => bus,
  };
}
