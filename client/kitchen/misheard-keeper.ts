import { effect } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { takenBackWithinS } from "../../core/speech/misheard/limits.ts";
import type { HeardSound } from "../../core/speech/misheard/sound-to-hand-out.ts";
import {
  forgetOld,
  idleWatch,
  type Keep,
  type Sentence,
  watchAnswer,
} from "../../core/speech/misheard/watch.ts";
import type { Verdict } from "../../core/speech/verdict.ts";
import { answerKind } from "../../core/talk/answer-kind.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Caller, Earshot } from "./caller.ts";
import type { MisheardRecord } from "./misheard-model.ts";
import type { Settings } from "./settings.ts";

/** What keeping is joined to. */
export interface KeeperNeeds {
  readonly caller: Pick<Caller, "replied" | "remark"> & Pick<Earshot, "grammar">;
  readonly settings: ReadonlySignal<Settings>;
  readonly record: () => Promise<MisheardRecord>;
  readonly now: () => Instant;
}

/** Follows what comes of each sentence, and keeps those that were misheard; does nothing while the record is off. */
export interface MisheardKeeper {
  /** Answers a sentence; `sound` is what the ear handed out with it. */
  readonly follow: (verdict: Verdict, sound: HeardSound | null, answer: () => void) => void;
  readonly close: () => void;
}

/** The answer is spoken before anything is worked out for the record, in ms. */
const afterAnswerMs = 1_000;

const notLoaded = "The misheard sentences cannot be kept while the server is away.";

/** Starts following. */
export function createMisheardKeeper(needs: KeeperNeeds): MisheardKeeper {
  const keeper = new Keeper(needs);
  const stops = [
    effect(() => keeper.answered(needs.caller.replied.value)),
    effect(() => {
      if (!needs.settings.value.keepMisheard) keeper.forget();
    }),
  ];
  return {
    follow: keeper.follow,
    close: () => {
      for (const stop of stops) stop();
      keeper.forget();
    },
  };
}

class Keeper {
  private readonly needs: KeeperNeeds;
  private watch = idleWatch;
  /** The sentence that is being answered. */
  private current: Sentence | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private hasTold = false;

  constructor(needs: KeeperNeeds) {
    this.needs = needs;
  }

  readonly follow: MisheardKeeper["follow"] = (verdict, sound, answer) => {
    this.current = this.isOn() && sound !== null ? this.sentenceOf(verdict, sound) : null;
    if (verdict.kind === "none" && this.current !== null)
      this.keep({ sentence: this.current, cameTo: "nothing" });
    answer();
    this.current = null;
  };

  answered(replied: Caller["replied"]["value"]): void {
    if (replied === null || !this.isOn()) return;
    const { reply, before } = replied;
    const answer = answerKind(reply, before);
    const { watch, keep } = watchAnswer(this.watch, { at: this.needs.now(), sentence: this.current, answer });
    this.watch = watch;
    if (keep !== null) this.keep(keep);
    clearTimeout(this.timer);
    if (watch.last !== null) this.timer = setTimeout(() => this.forgetOld(), takenBackWithinS * 1000 + 100);
  }

  forget(): void {
    clearTimeout(this.timer);
    this.watch = idleWatch;
  }

  private forgetOld(): void {
    this.watch = forgetOld(this.watch, this.needs.now());
  }

  private isOn(): boolean {
    return this.needs.settings.peek().keepMisheard;
  }

  private sentenceOf(verdict: Verdict, { samples, words }: HeardSound): Sentence {
    const rivals = verdict.kind === "command" ? verdict.rivals.map((rival) => rival.join(" ")) : [];
    const { caller, now } = this.needs;
    return { at: now(), samples, heard: words.join(" "), rivals, grammar: caller.grammar.peek() };
  }

  private keep(keep: Keep): void {
    setTimeout(() => {
      // The cook may have turned it off in this very second.
      if (this.isOn()) void this.keepNow(keep);
    }, afterAnswerMs);
  }

  private async keepNow(keep: Keep): Promise<void> {
    const trouble = await this.needs
      .record()
      .then((record) => record.keep(keep))
      .catch(() => notLoaded);
    // Once, not with every sentence of the evening.
    if (trouble !== null && !this.hasTold) this.needs.caller.remark(trouble);
    this.hasTold = trouble !== null;
  }
}
