import type { EarState } from "../../kitchen/ear-model.ts";
import type { Settings } from "../../kitchen/settings.ts";

/** What the ear does now, and what a touch on it will do. */
export interface EarWords {
  readonly now: string;
  readonly touch: string;
}

/** In words that can be read at a glance. */
export function earWords(
  state: EarState,
  { address, listening }: Pick<Settings, "address" | "listening">,
): EarWords {
  const once = "Listen to one sentence";
  switch (state.kind) {
    case "off":
      return { now: "Not listening", touch: "Start listening" };
    case "loading":
      return { now: loading(state.progress), touch: "Getting ready to listen" };
    case "waiting":
      return { now: listening === "tap" ? "Touch, then speak" : `Say “${address}”`, touch: once };
    case "open":
      return { now: "Just speak", touch: once };
    case "hearing":
      return { now: "Hearing you", touch: once };
    case "thinking":
      return { now: "One moment", touch: once };
    case "muted":
      return { now: "Speaking; “stop” is heard", touch: once };
    case "trouble":
      return { now: "Cannot hear", touch: "Try to listen again" };
  }
}

const loading = (progress: number | null): string =>
  progress === null ? "Getting ready" : `Getting ready, ${Math.round(progress * 100)} %`;
