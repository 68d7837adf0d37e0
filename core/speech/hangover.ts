import type { Progress } from "./progress.ts";

/** Quiet that ends an utterance (ms) whose words are a whole sentence, one that could go on, one that must go on. */
export type HangoverMs = {
  readonly finished: number;
  readonly mayGoOn: number;
  readonly begun: number;
  readonly otherwise: number;
};

/** How long to wait in a pause after so much of a sentence; null where nothing is known of it. */
export function hangoverAfter(progress: Progress | null, hangoverMs: HangoverMs): number {
  switch (progress) {
    case "finished":
      return hangoverMs.finished;
    case "may-go-on":
      return hangoverMs.mayGoOn;
    case "begun":
      return hangoverMs.begun;
    case "unmatched":
    case null:
      return hangoverMs.otherwise;
  }
}
