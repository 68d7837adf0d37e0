import type { SpeechJob } from "./speech-request.ts";

/** To the synthesiser's thread: one sentence at a time, answered under the same id. */
export interface ToVoice {
  readonly id: number;
  readonly job: SpeechJob;
}

/** From the synthesiser's thread. */
export type FromVoice =
  | { readonly type: "ready" }
  | { readonly type: "spoken"; readonly id: number; readonly wav: Uint8Array }
  | { readonly type: "failed"; readonly id: number; readonly reason: string };
