import type { Grammar } from "./grammar.ts";
import type { ListenFor, ListeningMode } from "./recogniser.ts";
import type { Verdict } from "./verdict.ts";

/** What the screen shows of the ear. */
export type ListenerState =
  | { readonly kind: "off" }
  | { readonly kind: "loading" }
  | { readonly kind: "listening"; readonly mode: ListeningMode }
  | { readonly kind: "hearing"; readonly mode: ListeningMode }
  | { readonly kind: "thinking" }
  | { readonly kind: "failed"; readonly sentence: string };

type Phase = "off" | "loading" | "listening" | "hearing" | "thinking" | { readonly failed: string };

/** All that decides what is listened for. Moments are milliseconds on any one clock, handed in by the shell. */
export type Listening = {
  readonly phase: Phase;
  /** Whether sentences need the address when nothing else is said: the cook's own choice. */
  readonly usual: "addressed" | "open";
  readonly address: string;
  readonly grammar: Grammar;
  /** No address needed before this moment; null where no window is open. */
  readonly openUntil: number | null;
  /** A tap asked to be heard once; ends with the next command or when its window closes. */
  readonly once: boolean;
  /** What is heard while the caller speaks; null while it is silent. */
  readonly muted: Muted | null;
};

/** What is heard while the caller speaks: a few sentences, and whatever follows the address. */
export type Muted = {
  readonly stopSentences: readonly string[];
  /** Null where the caller speaks the address itself, and would call itself. */
  readonly address: string | null;
};

/** What happens to the ear. */
export type ListeningInput =
  | { readonly kind: "start" }
  | { readonly kind: "loaded" }
  | { readonly kind: "failed"; readonly sentence: string }
  | { readonly kind: "speech-started" }
  | { readonly kind: "heard"; readonly verdict: Verdict }
  | { readonly kind: "answered" }
  | { readonly kind: "grammar"; readonly grammar: Grammar }
  | { readonly kind: "address"; readonly address: string }
  | { readonly kind: "usual"; readonly usual: "addressed" | "open" }
  | { readonly kind: "window"; readonly until: number }
  | { readonly kind: "once"; readonly until: number }
  | { readonly kind: "time"; readonly now: number }
  | { readonly kind: "mute"; readonly muted: Muted }
  /** The caller is silent again; with `openUntil` it waits for an answer. */
  | { readonly kind: "unmute"; readonly openUntil: number | null }
  | { readonly kind: "close" };

/** An ear that is off, in addressed mode. */
export function initialListening(grammar: Grammar, address: string): Listening {
  return {
    phase: "off",
    usual: "addressed",
    address,
    grammar,
    openUntil: null,
    once: false,
    muted: null,
  };
}

/** The next state. Total: what makes no sense now changes nothing. */
export function evolveListening(state: Listening, input: ListeningInput): Listening {
  switch (input.kind) {
    case "start":
      return state.phase === "off" || typeof state.phase === "object"
        ? { ...state, phase: "loading" }
        : state;
    case "loaded":
      return state.phase === "loading" ? { ...state, phase: "listening" } : state;
    case "failed":
      return { ...state, phase: { failed: input.sentence } };
    case "speech-started":
      return isAwake(state) ? { ...state, phase: "hearing" } : state;
    case "heard":
      return isAwake(state) ? afterHeard(state, input.verdict) : state;
    case "answered":
      return state.phase === "thinking" ? { ...state, phase: "listening" } : state;
    case "grammar":
      return { ...state, grammar: input.grammar };
    case "address":
      return { ...state, address: input.address };
    case "usual":
      return { ...state, usual: input.usual };
    case "window":
      return openUntil(state, input.until);
    case "once":
      return { ...openUntil(state, input.until), once: true };
    case "time":
      return closeWindow(state, input.now);
    case "mute":
      return { ...state, muted: input.muted };
    case "unmute":
      return openUntil({ ...state, muted: null }, input.openUntil);
    case "close":
      return { ...state, phase: "off", openUntil: null, once: false, muted: null };
  }
}

/** What the recogniser should listen for in this state. */
export function listenForNow(state: Listening): ListenFor {
  const { grammar, address, muted } = state;
  return { grammar, address, mode: modeOf(state), stopSentences: [], ...muted };
}

/** What to show of this state. */
export function listenerState(state: Listening): ListenerState {
  if (typeof state.phase === "object") return { kind: "failed", sentence: state.phase.failed };
  if (state.phase === "listening" || state.phase === "hearing")
    return { kind: state.phase, mode: modeOf(state) };
  return { kind: state.phase };
}

function modeOf(state: Listening): ListeningMode {
  if (state.muted !== null) return "stop-only";
  return state.openUntil !== null ? "open" : state.usual;
}

/** A window is never cut short by a shorter one. */
function openUntil(state: Listening, until: number | null): Listening {
  return until === null ? state : { ...state, openUntil: Math.max(state.openUntil ?? 0, until) };
}

function isAwake(state: Listening): boolean {
  return state.phase === "listening" || state.phase === "hearing" || state.phase === "thinking";
}

function afterHeard(state: Listening, verdict: Verdict): Listening {
  if (verdict.kind !== "command") return { ...state, phase: "listening" };
  // A tap asks for one command; the window after an answer may take several.
  return state.once
    ? { ...state, phase: "thinking", once: false, openUntil: null }
    : { ...state, phase: "thinking" };
}

/** A window closes at its time, but never in the middle of a sentence that began inside it. */
function closeWindow(state: Listening, now: number): Listening {
  if (state.openUntil === null || now < state.openUntil || state.phase === "hearing") return state;
  return { ...state, openUntil: null, once: false };
}
