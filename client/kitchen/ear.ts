import { computed, effect, signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { Verdict } from "../../core/speech/verdict.ts";
import type { ListeningMode } from "../../core/speech/recogniser.ts";
import type { ListenerState } from "../../core/speech/listening.ts";
import { usualTuning } from "../../core/speech/tuning.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";
import { heardWhileSaying } from "../../core/talk/heard-while-saying.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Sound } from "../sound/player.ts";
import { tailMs } from "../sound/settings.ts";
import { chooseEngine } from "../voice/choose-engine.ts";
import type { ModelLoading } from "../voice/engine.ts";
import { createListener } from "../voice/listener.ts";
import type { Heard, Listener } from "../voice/listener.ts";
import type { Caller, Earshot } from "./caller.ts";
import type { Ear, EarState } from "./ear-model.ts";
import type { EarTrial } from "./ear-trial.ts";
import { createMisheardKeeper, type MisheardKeeper } from "./misheard-keeper.ts";
import type { MisheardRecord } from "./misheard-model.ts";
import { createRoomSign } from "./room-sign.ts";
import type { RoomSign } from "./room-sign.ts";
import type { Settings } from "./settings.ts";

/** What the ear is joined to. */
export interface EarNeeds {
  readonly caller: Caller;
  readonly earshot: Earshot;
  readonly sound: Sound;
  readonly settings: ReadonlySignal<Settings>;
  /** What the caller is saying, its tail in the room included; null while it is silent. */
  readonly saying: ReadonlySignal<string | null>;
  /** Set while the cook tries out the ear. */
  readonly trial: ReadonlySignal<EarTrial | null>;
  /** True while a recording is played: nothing is heard then. */
  readonly deaf: ReadonlySignal<boolean>;
  readonly misheard: () => Promise<MisheardRecord>;
  readonly now: () => Instant;
}

/** After an answer or a call the cook may go on without the address for this long. */
const windowMs = 5_000;
/** After a question it takes longer to make up one's mind. */
const questionMs = 12_000;
/** After the address alone. */
const addressedMs = 6_000;

/** What the screen shows of the ear. */
class EarSigns {
  readonly state = signal<EarState>({ kind: "off", sentence: null, loading: null });
  readonly level = signal(0);
  readonly partial = signal("");
  private loading: ModelLoading | null = null;
  private readonly roomSign: RoomSign;

  constructor(roomSign: RoomSign) {
    this.roomSign = roomSign;
  }

  all(deaf: ReadonlySignal<boolean>): Pick<Ear, "state" | "level" | "partial" | "room"> {
    const state = computed(() => (deaf.value ? whileDeaf(this.state.value) : this.state.value));
    return { state, level: this.level, partial: this.partial, room: this.roomSign.noise };
  }

  show(next: ListenerState): void {
    if (next.kind === "off" || next.kind === "failed") this.roomSign.forget();
    this.state.value = shown(next, this.loading);
  }

  readonly showLevel = (dbfs: number): void => {
    this.level.value = Math.min(1, Math.max(0, (dbfs + 60) / 50));
  };

  showPartial(words: readonly string[]): void {
    this.partial.value = words.join(" ");
  }

  /** @returns the words of the sentence that is over */
  endSentence(): readonly string[] {
    const words = this.partial.value.split(" ").filter((word) => word !== "");
    this.partial.value = "";
    return words;
  }

  /** A model goes on loading while the ear is off, and is shown when it is wanted. */
  showLoading(loading: ModelLoading | null): void {
    this.loading = loading;
    const now = this.state.peek();
    if (now.kind === "loading") this.state.value = { ...now, loading };
  }
}

/** Joins microphone and recogniser to the conversation. Nothing is opened before `start`. */
export async function createEar(needs: EarNeeds): Promise<Ear> {
  const { caller, earshot, settings } = needs;
  const room = roomSignOf(needs);
  const signs = new EarSigns(room);
  let mode: ListeningMode = "addressed";
  const listener: Listener = createListener({
    grammar: earshot.grammar.value,
    address: settings.value.address,
    engine: await chooseEngine(async (path) => (await fetch(path)).json() as Promise<unknown>),
    onHeard: (sentence) => take(sentence, signs.endSentence(), mode, needs, listener, keeper),
    onState: (next) => {
      if (next.kind === "failed") caller.tell(next.sentence);
      if ("mode" in next) mode = next.mode;
      signs.show(next);
    },
    onLevel: (dbfs) => (needs.trial.value?.onLevel ?? signs.showLevel)(dbfs),
    onRoom: room.take,
    onPartial: (words) => heardSoFar(words, signs, needs),
    onLoading: (loading) => signs.showLoading(loading),
    onTookOver: (sentence) => {
      signs.showLoading(null);
      caller.tell(sentence);
    },
  });
  const keeper = keeperOf(needs);
  const stop = follow(listener, needs);
  return {
    ...signs.all(needs.deaf),
    prepare: listener.prepare,
    start: listener.start,
    listenOnce: listener.listenOnce,
    stop: () => {
      stop();
      keeper.close();
      void listener.close();
    },
  };
}

const keeperOf = ({ caller, earshot, settings, misheard, now }: EarNeeds): MisheardKeeper =>
  createMisheardKeeper({
    caller: { replied: caller.replied, remark: caller.remark, grammar: earshot.grammar },
    settings,
    record: misheard,
    now,
  });

/** The room is spoken of where nobody speaks and nothing rings, and not to who listens by touch alone. */
function roomSignOf({ caller, sound, settings, saying, trial, deaf }: EarNeeds): RoomSign {
  const sign = createRoomSign(caller.remark, () => {
    const isFree = !sound.isSpeaking() && sound.ringing().length === 0;
    return isFree && settings.peek().listening !== "tap";
  });
  // The caller's own voice says nothing about the room, nor does a recording.
  const take: RoomSign["take"] = (second) => {
    if (saying.peek() === null && !deaf.peek()) (trial.peek()?.onRoom ?? sign.take)(second);
  };
  return { ...sign, take };
}

/** Whether the ear was only tried out. What is said while the caller speaks is no trial, and is not obeyed either. */
function isTried(
  { verdict, levels, beganAgoMs }: Heard,
  words: readonly string[],
  { sound, trial }: EarNeeds,
): boolean {
  if (trial.value === null) return false;
  if (!sound.isSpeaking()) trial.value.onHeard({ verdict, levels, words, beganAgoMs });
  return true;
}

function take(
  sentence: Heard,
  words: readonly string[],
  mode: ListeningMode,
  needs: EarNeeds,
  listener: Listener,
  keeper: MisheardKeeper,
): void {
  if (isTried(sentence, words, needs)) return;
  const sound = mayKeep(mode, needs.settings.peek()) ? sentence.sound : null;
  keeper.follow(sentence.verdict, sound, () => heard(sentence.verdict, mode, needs, listener));
}

/** Who listens by touch alone is not overheard, and even less kept. */
const mayKeep = (mode: ListeningMode, { listening }: Settings): boolean =>
  listening !== "tap" || mode === "open";

function heard(
  verdict: Verdict,
  mode: ListeningMode,
  { earshot, sound, settings }: EarNeeds,
  listener: Listener,
): void {
  // Who listens by touch alone does not want to be overheard: without a touch the address opens nothing.
  const isOverheard = verdict.kind === "address-only" || (verdict.kind === "command" && verdict.addressed);
  if (settings.value.listening === "tap" && isOverheard && mode !== "open") return;
  switch (verdict.kind) {
    case "command":
      // Whoever calls in the middle of a sentence has heard enough of it.
      if (sound.isSpeaking() && verdict.addressed) sound.stopTalking();
      // Without the address only the few stop sentences are heard then, and all of them mean the same.
      if (sound.isSpeaking() && !verdict.addressed) earshot.hear("stop talking");
      else earshot.hearUnsurely([verdict.words, ...verdict.rivals]);
      return;
    case "address-only":
      if (sound.isSpeaking()) sound.stopTalking();
      sound.signal("listening");
      listener.openWindow(addressedMs);
      return;
    case "none":
      if (verdict.why === "doubtful") sound.signal("notUnderstood");
  }
}

/** Whoever calls in the middle of a sentence has heard enough of it: at once, not when theirs is over. */
function heardSoFar(words: readonly string[], signs: EarSigns, { sound, settings }: EarNeeds): void {
  signs.showPartial(words);
  const { address, listening } = settings.value;
  const hasCalled = spokenWords(address).every((word, at) => words[at] === word);
  if (listening !== "tap" && hasCalled && sound.isSpeaking()) sound.stopTalking();
}

/** Keeps the listener in step with the meal, the settings and the caller's own voice. */
function follow(
  listener: Listener,
  { caller, earshot, settings, saying, trial, deaf }: EarNeeds,
): () => void {
  let isDeaf = false;
  const stops = [
    effect(() => {
      // A trial listens for what could be said when it began.
      listener.setGrammar(trial.value?.grammar(earshot.grammar.peek()) ?? earshot.grammar.value);
    }),
    effect(() => {
      const { address, listening, tuning, respellings } = settings.value;
      listener.setAddress(address);
      listener.setRespellings(respellings);
      listener.setUsual(trial.value?.mode ?? (listening === "open" ? "open" : "addressed"));
      listener.setHandOut(settings.value.keepMisheard ? "maybe-misheard" : "never");
      listener.setTuning(trial.value?.tuning ?? tuning ?? usualTuning);
    }),
    effect(() => {
      if (deaf.value) {
        isDeaf = true;
        listener.mute({ stopSentences: [], address: null });
        return;
      }
      if (saying.value !== null) {
        const { listening, address } = settings.peek();
        listener.mute(heardWhileSaying(saying.value, listening === "tap" ? null : address));
        return;
      }
      // Who has listened to a recording was asked nothing.
      const hasListened = isDeaf;
      isDeaf = false;
      const hasSpoken = caller.lines.peek().some((line) => line.who === "caller");
      const opens = hasSpoken && settings.peek().listening !== "tap" && trial.peek() === null && !hasListened;
      const forMs = caller.dialogue.peek().question === null ? windowMs : questionMs;
      listener.unmute(tailMs, opens ? forMs : null);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

/** An ear that listens is deaf; one that is off, or in trouble, stays so. */
function whileDeaf(state: EarState): EarState {
  const listens = state.kind !== "off" && state.kind !== "loading" && state.kind !== "trouble";
  return listens ? { ...state, kind: "deaf" } : state;
}

function shown(state: ListenerState, loading: ModelLoading | null): EarState {
  const plain = (kind: EarState["kind"]): EarState => ({ kind, sentence: null, loading: null });
  switch (state.kind) {
    case "loading":
      return { ...plain("loading"), loading };
    case "off":
    case "hearing":
    case "thinking":
      return plain(state.kind);
    case "listening":
      return plain(state.mode === "addressed" ? "waiting" : state.mode === "open" ? "open" : "muted");
    case "failed":
      return { kind: "trouble", sentence: state.sentence, loading: null };
  }
}
