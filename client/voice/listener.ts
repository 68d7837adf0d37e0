import type { Verdict } from "../../core/speech/acceptance.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import {
  evolveListening,
  initialListening,
  listenerState,
  type Listening,
  type ListeningInput,
  type ListenerState,
  listenForNow,
} from "../../core/speech/listening.ts";
import type { FromRecogniser } from "../../core/speech/recogniser-messages.ts";
import { type EngineChoice, type EngineLink, openEngine } from "./engine-link.ts";
import { type Microphone, openMicrophone } from "./microphone.ts";

/** What a listener is made with. Callbacks come one at a time, never inside a call of yours. */
export type ListenerOptions = {
  readonly grammar: Grammar;
  /** Spoken before a command ("okay kitchen"). */
  readonly address: string;
  readonly engine: EngineChoice;
  /**
   * An utterance that came to a command or to the address alone, or to nothing (so that the screen can say so).
   * The listener thinks until the promise settles.
   */
  readonly onHeard: (verdict: Verdict) => void | Promise<void>;
  readonly onState: (state: ListenerState) => void;
  /** Loudness of the microphone ten times a second, dBFS. */
  readonly onLevel: (dbfs: number) => void;
  /** Words so far: show them, never act on them. */
  readonly onPartial: (words: readonly string[]) => void;
};

/** The ear of the page. */
export type Listener = {
  /** Asks for the microphone and loads the recogniser, both at once; call it from a touch. */
  readonly start: () => Promise<void>;
  readonly setGrammar: (grammar: Grammar) => void;
  readonly setAddress: (address: string) => void;
  /** "open" needs no address ever: the cook's own choice. */
  readonly setUsual: (usual: "addressed" | "open") => void;
  /** For this long no address is needed. */
  readonly openWindow: (ms: number) => void;
  /** The next sentence needs no address. */
  readonly listenOnce: () => void;
  /** The caller speaks: only these sentences are heard. */
  readonly mute: (stopWords: readonly string[]) => void;
  /** The caller has finished, its tail in the room included. */
  readonly unmute: () => void;
  /** Closes microphone, audio context and recogniser; `start` may follow. */
  readonly close: () => Promise<void>;
};

/** How long a tap listens for its one sentence. */
const onceMs = 8_000;

/** Makes a listener, off until `start`. */
export function createListener(options: ListenerOptions): Listener {
  let state: Listening = initialListening(options.grammar, options.address);
  let engine: EngineLink | null = null;
  let microphone: Microphone | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let told = "";
  let sent: Listening | null = null;

  const apply = (input: ListeningInput): void => {
    state = evolveListening(state, input);
    sendGrammar();
    const shown = listenerState(state);
    if (JSON.stringify(shown) === told) return;
    told = JSON.stringify(shown);
    options.onState(shown);
  };
  const sendGrammar = (): void => {
    if (engine === null || state.phase === "off" || state.phase === "loading") return;
    const what = listenForNow(state);
    const before = sent === null ? null : listenForNow(sent);
    const isSame =
      before?.mode === what.mode &&
      before.address === what.address &&
      sent?.grammar === state.grammar &&
      sent.stopWords === state.stopWords;
    if (isSame) return;
    // What the caller is about to say must not be heard as a command, so muting cannot wait for a sentence to end.
    const isMuting = (sent?.stopWords ?? null) !== state.stopWords;
    sent = state;
    engine.post({ kind: "listen-for", what, when: isMuting ? "now" : "after-utterance" }, []);
  };
  const onMessage = (message: FromRecogniser): void => {
    switch (message.kind) {
      case "loaded":
        return apply({ kind: "loaded" });
      case "failed":
        return fail(message.sentence);
      case "level":
        return options.onLevel(message.dbfs);
      case "speech-started":
        return apply({ kind: "speech-started" });
      case "partial":
        return options.onPartial(message.words);
      case "grammar-refused":
        return fail(message.sentence);
      case "heard":
        return void heard(message.verdict);
    }
  };
  const heard = async (verdict: Verdict): Promise<void> => {
    apply({ kind: "heard", verdict });
    tick();
    try {
      await options.onHeard(verdict);
    } finally {
      apply({ kind: "answered" });
    }
  };
  const fail = (sentence: string): void => {
    apply({ kind: "failed", sentence });
    void release();
  };
  const release = async (): Promise<void> => {
    clearTimeout(timer);
    engine?.close();
    engine = null;
    sent = null;
    const open = microphone;
    microphone = null;
    await open?.close();
  };
  const tick = (): void => {
    clearTimeout(timer);
    apply({ kind: "time", now: performance.now() });
    if (state.openUntil === null) return;
    // At least a little later: a sentence may keep the window open beyond its time.
    timer = setTimeout(tick, Math.max(50, state.openUntil - performance.now()));
  };
  const openFor = (kind: "window" | "once", ms: number): void => {
    apply({ kind, until: performance.now() + ms });
    tick();
  };
  return {
    start: async () => {
      if (state.phase !== "off" && typeof state.phase !== "object") return;
      apply({ kind: "start" });
      const [opened, link] = await Promise.all([openMicrophone(fail), openEngine(options.engine, onMessage)]);
      engine = link;
      if (opened.ok) microphone = opened.value;
      if (!opened.ok) return fail(opened.error);
      if (listenerState(state).kind === "off" || listenerState(state).kind === "failed") return release();
      link.post({ kind: "connect", port: opened.value.port, rate: opened.value.rate }, [opened.value.port]);
      sendGrammar();
    },
    setGrammar: (grammar) => apply({ kind: "grammar", grammar }),
    setAddress: (address) => apply({ kind: "address", address }),
    setUsual: (usual) => apply({ kind: "usual", usual }),
    openWindow: (ms) => openFor("window", ms),
    listenOnce: () => openFor("once", onceMs),
    mute: (stopWords) => apply({ kind: "mute", stopWords }),
    unmute: () => apply({ kind: "unmute" }),
    close: async () => {
      apply({ kind: "close" });
      await release();
    },
  };
}
