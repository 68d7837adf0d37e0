import type { Grammar } from "../../core/speech/grammar.ts";
import { changeOf, noGrammar } from "../../core/speech/grammar-change.ts";
import {
  evolveListening,
  initialListening,
  listenerState,
  type Listening,
  type ListeningInput,
  type ListenerState,
  listenForNow,
  type Muted,
} from "../../core/speech/listening.ts";
import type { ListenWhen } from "../../core/speech/hearing.ts";
import type { HandOut } from "../../core/speech/misheard/sound-to-hand-out.ts";
import { type CooksSpeech, cooksSpeech } from "../../core/speech/cooks-speech.ts";
import type { Respelling } from "../../core/speech/respelling.ts";
import type { RoomSecond } from "../../core/speech/room-noise.ts";
import type { ListenFor } from "../../core/speech/recogniser.ts";
import { type EarTuning, usualTuning } from "../../core/speech/tuning.ts";
import type { EngineChoice, EngineLink, FromEngine, ModelLoading } from "./engine.ts";
import { openEngine } from "./engine-link.ts";
import { type Microphone, openMicrophone } from "./microphone.ts";

/** An utterance that is over. */
export type Heard = Extract<FromEngine, { readonly kind: "heard" }>;

/** What a listener is made with. Callbacks come one at a time, never inside a call of yours. */
export type ListenerOptions = {
  readonly grammar: Grammar;
  /** Spoken before a command ("listen kitchen"). */
  readonly address: string;
  readonly engine: EngineChoice;
  /**
   * An utterance that came to a command or to the address alone, or to nothing (so that the screen can say so).
   * The listener thinks until the promise settles.
   */
  readonly onHeard: (heard: Heard) => void | Promise<void>;
  readonly onState: (state: ListenerState) => void;
  /** Loudness of the microphone ten times a second, dBFS. */
  readonly onLevel: (dbfs: number) => void;
  /** What the room was like in the last second. */
  readonly onRoom: (second: RoomSecond) => void;
  /** Words so far: show them, never act on them. */
  readonly onPartial: (words: readonly string[]) => void;
  /** How far a model is that takes a while to load, in `prepare` too. */
  readonly onLoading: (loading: ModelLoading) => void;
  /** The engine chosen cannot be used and the embedded one listens; a sentence for the cook, once. */
  readonly onTookOver: (sentence: string) => void;
};

/** The ear of the page. */
export type Listener = {
  /** Loads the recogniser ahead of `start`; nothing is listened to and nothing is told, not even a failure. */
  readonly prepare: () => Promise<void>;
  /** Asks for the microphone and loads the recogniser, both at once; call it from a touch. */
  readonly start: () => Promise<void>;
  readonly setGrammar: (grammar: Grammar) => void;
  readonly setAddress: (address: string) => void;
  /** "open" needs no address ever: the cook's own choice. */
  readonly setUsual: (usual: "addressed" | "open") => void;
  /** Suits the ear to the cook, now and after every start. */
  readonly setTuning: (tuning: EarTuning) => void;
  /** Whether the sound of sentences that may be misheard comes with them, now and after every start; at first never. */
  readonly setHandOut: (sounds: HandOut) => void;
  /** Words that this cook says otherwise than they are read, now and after every start. */
  readonly setRespellings: (respellings: readonly Respelling[]) => void;
  /** For this long no address is needed. */
  readonly openWindow: (ms: number) => void;
  /** The next sentence needs no address. */
  readonly listenOnce: () => void;
  /** The caller speaks: only this is heard. */
  readonly mute: (muted: Muted) => void;
  /**
   * The caller has been silent for `tailMs`. What the cook began to say meanwhile is heard anew as an answer.
   * @param windowMs for how long no address is needed now; null opens no window
   */
  readonly unmute: (tailMs: number, windowMs: number | null) => void;
  /** Closes microphone, audio context and recogniser; `start` may follow. */
  readonly close: () => Promise<void>;
};

/** Longer than any sentence. */
const longestMs = 15_000;

/** How long a tap listens for its one sentence. */
const onceMs = 8_000;

/** Makes a listener, off until `start`. */
export function createListener(options: ListenerOptions): Listener {
  return new PageListener(options);
}

class PageListener implements Listener {
  private readonly options: ListenerOptions;
  private listening: Listening;
  /** Loading or loaded; its first message says which. */
  private opening: Promise<EngineLink> | null = null;
  private isLoaded = false;
  private engine: EngineLink | null = null;
  private microphone: Microphone | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private told = "";
  /** What the engine was last told to listen for. */
  private sent: { readonly grammar: Grammar; readonly how: Omit<ListenFor, "grammar"> } | null = null;
  private speech: CooksSpeech = cooksSpeech([]);
  private tuning = usualTuning;
  private sounds: HandOut = "never";
  private choice: EngineChoice;
  /** Why another engine listens than the one chosen, until it is told. */
  private tookOver: string | null = null;

  constructor(options: ListenerOptions) {
    this.options = options;
    this.choice = options.engine;
    this.listening = initialListening(options.grammar, options.address);
  }

  readonly prepare = async (): Promise<void> => {
    await this.open();
  };

  readonly start = async (): Promise<void> => {
    if (!this.is("off") && !this.is("failed")) return;
    this.apply({ kind: "start" });
    this.tellTakeOver();
    if (this.isLoaded) this.apply({ kind: "loaded" });
    const fail = (sentence: string): void => this.fail(sentence);
    const [opened, engine] = await Promise.all([openMicrophone(fail), this.open()]);
    this.engine = engine;
    if (opened.ok) this.microphone = opened.value;
    else return this.fail(opened.error);
    // Closed or failed while it opened.
    if (this.is("off") || this.is("failed")) return this.release();
    const { port, rate } = opened.value;
    engine.post({ kind: "tune", tuning: this.tuning }, []);
    engine.post({ kind: "hand-out", sounds: this.sounds }, []);
    engine.post({ kind: "connect", port, rate }, [port]);
    this.sendGrammar("after-utterance");
  };

  readonly setGrammar = (grammar: Grammar): void => this.apply({ kind: "grammar", grammar });
  readonly setAddress = (address: string): void => this.apply({ kind: "address", address });
  readonly setUsual = (usual: "addressed" | "open"): void => this.apply({ kind: "usual", usual });
  readonly setTuning = (tuning: EarTuning): void => {
    this.tuning = tuning;
    this.engine?.post({ kind: "tune", tuning }, []);
  };
  readonly setHandOut: Listener["setHandOut"] = (sounds) => {
    this.sounds = sounds;
    this.engine?.post({ kind: "hand-out", sounds }, []);
  };
  readonly setRespellings: Listener["setRespellings"] = (respellings) => {
    this.speech = cooksSpeech(respellings);
    this.sendGrammar("after-utterance");
  };
  readonly openWindow = (ms: number): void => this.openFor("window", ms);
  readonly listenOnce = (): void => this.openFor("once", onceMs);
  /** A bare command under way would have the caller's own words in it: it is heard anew, by the stricter rules. */
  readonly mute = (muted: Muted): void => this.apply({ kind: "mute", muted }, { keepMs: longestMs });
  readonly unmute = (tailMs: number, windowMs: number | null): void => {
    const openUntil = windowMs === null ? null : performance.now() + windowMs;
    this.apply({ kind: "unmute", openUntil }, { keepMs: tailMs });
    this.tick();
  };

  readonly close = async (): Promise<void> => {
    this.apply({ kind: "close" });
    await this.release();
  };

  private open(): Promise<EngineLink> {
    this.opening ??= openEngine(this.choice, (message) => this.receive(message));
    return this.opening;
  }

  private is(kind: ListenerState["kind"]): boolean {
    return listenerState(this.listening).kind === kind;
  }

  private apply(input: ListeningInput, when: ListenWhen = "after-utterance"): void {
    this.listening = evolveListening(this.listening, input);
    this.sendGrammar(when);
    const shown = listenerState(this.listening);
    if (JSON.stringify(shown) === this.told) return;
    this.told = JSON.stringify(shown);
    this.options.onState(shown);
  }

  private sendGrammar(when: ListenWhen): void {
    const { engine, sent } = this;
    if (engine === null || this.is("off") || this.is("loading")) return;
    const { grammar: read, ...how } = listenForNow(this.listening);
    const grammar = this.speech.grammar(read);
    const known = sent?.grammar ?? noGrammar;
    if (known === grammar && JSON.stringify(sent?.how) === JSON.stringify(how)) return;
    this.sent = { grammar, how };
    if (known !== grammar) engine.post({ kind: "grammar", change: changeOf(known, grammar) }, []);
    engine.post({ kind: "listen-for", how, when }, []);
  }

  private receive(message: FromEngine): void {
    switch (message.kind) {
      case "loaded":
        this.isLoaded = true;
        return this.apply({ kind: "loaded" });
      case "failed":
      case "grammar-refused":
        return this.fail(message.sentence);
      case "level":
        return this.options.onLevel(message.dbfs);
      case "room":
        return this.options.onRoom(message);
      case "speech-started":
        return this.apply({ kind: "speech-started" });
      case "partial":
        return this.options.onPartial(this.speech.words(message.words));
      case "heard":
        return void this.heard({ ...message, ...this.speech.heard(message) });
      case "loading":
        return this.options.onLoading(message.loading);
      case "took-over":
        // For good: what could not be used once is not tried again at every touch.
        this.choice = { kind: "embedded" };
        this.tookOver = message.sentence;
        return this.tellTakeOver();
    }
  }

  /** What is only prepared tells nothing. */
  private tellTakeOver(): void {
    if (this.tookOver === null || this.is("off")) return;
    this.options.onTookOver(this.tookOver);
    this.tookOver = null;
  }

  private async heard(heard: Heard): Promise<void> {
    this.apply({ kind: "heard", verdict: heard.verdict });
    this.tick();
    try {
      await this.options.onHeard(heard);
    } finally {
      this.apply({ kind: "answered" });
    }
  }

  private fail(sentence: string): void {
    // What was only prepared may fail unnoticed: `start` tries again, and tells.
    if (!this.is("off")) this.apply({ kind: "failed", sentence });
    void this.release();
  }

  private async release(): Promise<void> {
    clearTimeout(this.timer);
    const { opening, microphone } = this;
    this.opening = null;
    this.isLoaded = false;
    this.engine = null;
    this.sent = null;
    this.microphone = null;
    (await opening)?.close();
    await microphone?.close();
  }

  private openFor(kind: "window" | "once", ms: number): void {
    this.apply({ kind, until: performance.now() + ms });
    this.tick();
  }

  private tick(): void {
    clearTimeout(this.timer);
    this.apply({ kind: "time", now: performance.now() });
    if (this.listening.openUntil === null) return;
    // At least a little later: a sentence may keep the window open beyond its time.
    const waitMs = Math.max(50, this.listening.openUntil - performance.now());
    this.timer = setTimeout(() => this.tick(), waitMs);
  }
}
