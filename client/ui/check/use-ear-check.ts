import { signal } from "@preact/signals";
import type { ReadonlySignal, Signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { checkGrammar, checkSentences } from "../../../core/speech/check/check-sentences.ts";
import {
  beginCheck,
  type CheckInput,
  type EarCheck,
  evolveCheck,
} from "../../../core/speech/check/ear-check.ts";
import { findingsOf } from "../../../core/speech/check/ear-findings.ts";
import { spokenWords } from "../../../core/speech/spoken-words.ts";
import { tuningLimits } from "../../../core/speech/tuning-limits.ts";
import { usualTuning } from "../../../core/speech/tuning.ts";
import type { CheckProps } from "./check-props.ts";

/** Levels of the moment in dBFS; -Infinity before the first. */
export interface LiveLevels {
  readonly voice: ReadonlySignal<number>;
  readonly room: ReadonlySignal<number>;
}

/** A check that runs while it is on the screen. */
export interface RunningCheck extends LiveLevels {
  /** Null until the ear listens for the first time. */
  readonly check: ReadonlySignal<EarCheck | null>;
  readonly act: (kind: "again" | "leave-out" | "finish") => void;
  /** From the first sentence again. */
  readonly restart: () => void;
}

/** What may be said when all is over. */
export const closingWords = { keep: "keep it", leave: "as before" } as const;

const tickMs = 100;
const now = (): number => performance.now();

/** Nothing in a check may depend on what was set before it, and the softest voice is to be measured. */
const measuring = { gainDb: 0, quietestDb: tuningLimits.quietestDb[0] };

/** Runs a check while its component stands; the ear listens as before when it goes. */
export function useEarCheck({ galley, session }: CheckProps, onSaid: (words: string) => void): RunningCheck {
  const [running] = useState(() => new Runner(galley, session));
  running.onSaid = onSaid;
  useEffect(() => running.run(), [running]);
  return running;
}

class Runner implements RunningCheck {
  readonly check: Signal<EarCheck | null> = signal(null);
  readonly voice = signal(-Infinity);
  readonly room = signal(-Infinity);
  onSaid: (words: string) => void = () => undefined;
  private isAway = true;
  private readonly galley: CheckProps["galley"];
  private readonly session: CheckProps["session"];

  constructor(galley: CheckProps["galley"], session: CheckProps["session"]) {
    this.galley = galley;
    this.session = session;
  }

  readonly act: RunningCheck["act"] = (kind) =>
    this.give(kind === "finish" ? { kind } : { kind, now: now() });

  readonly restart = (): void => {
    this.check.value = null;
    this.listenForSentences();
  };

  /** @returns ends it */
  run(): () => void {
    const { ear, trial } = this.galley;
    const { kind } = ear.state.peek();
    if (kind === "off" || kind === "trouble") void ear.start();
    this.listenForSentences();
    const timer = setInterval(() => this.tick(), tickMs);
    return () => {
      clearInterval(timer);
      trial.value = null;
    };
  }

  private sentences(): EarCheck["sentences"] {
    const { dishes } = this.session.meal;
    const foods = dishes.flatMap(({ ingredients }) => ingredients.map(({ item }) => item));
    return checkSentences({ dishes: dishes.map(({ name }) => name), foods });
  }

  private listenForSentences(): void {
    const said = this.sentences().map(({ words }) => words);
    this.galley.trial.value = {
      ...this.levels(),
      grammar: (usual) => checkGrammar(usual, said),
      mode: "open",
      tuning: measuring,
      onHeard: ({ beganAgoMs, ...utterance }) =>
        this.give({ kind: "heard", utterance, beganAt: now() - beganAgoMs, now: now() }),
    };
  }

  /** With what would be set, so that a voice that it is for is heard. */
  private listenForClosing(check: EarCheck): void {
    const { trial, settings } = this.galley;
    const { tuning } = settings.peek();
    const { proposal } = findingsOf(check, tuning);
    const said = Object.values(closingWords).map(spokenWords);
    trial.value = {
      ...this.levels(),
      grammar: (usual) => checkGrammar(usual, said),
      mode: "addressed",
      tuning: proposal.kind === "tune" ? proposal.tuning : (tuning ?? usualTuning),
      onHeard: ({ verdict }) => {
        if (verdict.kind === "command" && verdict.addressed) this.onSaid(verdict.words.join(" "));
      },
    };
  }

  private levels() {
    return {
      onLevel: (dbfs: number) => void (this.voice.value = dbfs),
      onRoom: ({ floorDb }: { readonly floorDb: number }) => {
        this.room.value = floorDb;
        this.give({ kind: "room", floorDb });
      },
    };
  }

  private tick(): void {
    const { kind } = this.galley.ear.state.peek();
    const wasAway = this.isAway;
    this.isAway = kind === "off" || kind === "loading" || kind === "trouble";
    if (this.isAway) return;
    // Nobody could be heard meanwhile: the sentence that was waited for is waited for anew.
    if (wasAway && this.check.peek()?.phase.kind === "waiting") this.act("again");
    this.check.value ??= beginCheck(this.galley.settings.peek().address, this.sentences(), now());
    const isFree = kind === "waiting" || kind === "open";
    this.give({ kind: "time", now: now(), hold: isFree ? "no" : "yes" });
  }

  private give(input: CheckInput): void {
    const before = this.check.peek();
    if (before === null) return;
    const after = evolveCheck(before, input);
    this.check.value = after;
    if (before.phase.kind !== "over" && after.phase.kind === "over") this.listenForClosing(after);
  }
}
