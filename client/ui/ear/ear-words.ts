import type { RoomNoise } from "../../../core/speech/room-noise.ts";
import type { EarState } from "../../kitchen/ear-model.ts";
import type { ModelLoading } from "../../voice/engine.ts";
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
  room: RoomNoise,
): EarWords {
  const once = "Listen to one sentence";
  switch (state.kind) {
    case "off":
      return { now: "Not listening", touch: "Start listening" };
    case "loading":
      return { now: "Getting ready", touch: "Getting ready to listen" };
    case "waiting":
    case "open":
    case "hearing":
      // What it hears then is the fan, and "hearing you" would be untrue.
      if (room === "too-loud") return { now: "Too loud to hear you", touch: once };
      return { now: listeningNow(state.kind, address, listening), touch: once };
    case "thinking":
      return { now: "One moment", touch: once };
    case "muted":
      return { now: "Speaking; “stop” is heard", touch: once };
    case "deaf":
      return { now: "Deaf while it plays", touch: once };
    case "trouble":
      return { now: "Cannot hear", touch: "Try to listen again" };
  }
}

function listeningNow(
  kind: "waiting" | "open" | "hearing",
  address: string,
  listening: Settings["listening"],
): string {
  switch (kind) {
    case "waiting":
      return listening === "tap" ? "Touch, then speak" : `Say “${address}”`;
    case "open":
      return "Just speak";
    case "hearing":
      return "Hearing you";
  }
}

/** What a model that loads is doing, for the line beside the ear. */
export function loadingWords(loading: ModelLoading): string {
  switch (loading.stage) {
    case "starting":
      return "Waking the recogniser";
    case "fetching":
      return loading.ofBytes === null
        ? `Bringing the speech model, ${megabytes(loading.bytes)} so far`
        : `Bringing the speech model, ${megabytes(loading.bytes)} of ${megabytes(loading.ofBytes)}`;
    case "unpacking":
      return "Unpacking the speech model";
  }
}

/** Of the whole work that is known: 0 to 1; null where it is not known. */
export function loadedShare(loading: ModelLoading): number | null {
  if (loading.stage !== "fetching" || loading.ofBytes === null) return null;
  return Math.min(1, loading.bytes / loading.ofBytes);
}

const megabytes = (bytes: number): string => `${(bytes / 1_000_000).toFixed(1)} MB`;
