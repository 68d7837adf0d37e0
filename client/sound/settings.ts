import type { Clock } from "./clock.ts";

/** A step of volume or rate: what it is now, and whether it could still move. */
export interface Setting {
  readonly value: number;
  readonly moved: boolean;
}

/** A value that goes up and down in fixed steps. */
export interface Stepper {
  readonly value: () => number;
  readonly move: (by: 1 | -1) => Setting;
}

/** 0 to 1, about 4 dB apart. */
export const volumeSteps = [0.16, 0.25, 0.4, 0.63, 1] as const;
/** Multiples of the voice's own pace. */
export const rateSteps = [0.7, 0.85, 1, 1.15, 1.3] as const;

/** @param start which of the steps to begin with @param onChange told the new value after each move */
export function stepper(steps: readonly number[], start: number, onChange: (value: number) => void): Stepper {
  let at = start;
  const value = (): number => steps[at] ?? 1;
  return {
    value,
    move: (by) => {
      const next = Math.max(0, Math.min(steps.length - 1, at + by));
      const moved = next !== at;
      at = next;
      if (moved) onChange(value());
      return { value: value(), moved };
    },
  };
}

/** How long the room still rings with the last word, in milliseconds: the recogniser must not hear it. */
export const tailMs = 300;

/** Knows when speech begins and has died away. */
export interface SpeakingGate {
  readonly isSpeaking: () => boolean;
  readonly sound: () => void;
  readonly silence: () => void;
}

/** @param onEdge "start" and "end" take turns, whatever is called */
export function speakingGate(clock: Clock, onEdge: (edge: "start" | "end") => void): SpeakingGate {
  let speaking = false;
  let callOff = (): void => undefined;
  return {
    isSpeaking: () => speaking,
    sound: () => {
      callOff();
      if (speaking) return;
      speaking = true;
      onEdge("start");
    },
    silence: () => {
      callOff();
      if (!speaking) return;
      callOff = clock.after(tailMs, () => {
        speaking = false;
        onEdge("end");
      });
    },
  };
}
