import { ok, type Result } from "../units/result.ts";
import type { Acceptance } from "./acceptance.ts";
import { toAutomaton } from "./automaton.ts";
import { type Expectation, expectation, isAddressed } from "./expectation.ts";
import type { ListenFor, Recogniser } from "./recogniser.ts";
import { joinSamples, listeningRate } from "./samples.ts";
import { createSecondOpinion, type SecondOpinion } from "./second-opinion.ts";
import { type Glance, glanceAt, nothingSeen } from "./transcribe/considered.ts";
import type { Considering } from "./transcribe/look-again.ts";
import { wordsOf } from "./transcribe/opinion.ts";
import { certainWords } from "./transcribe/settle.ts";
import { freeSearch, search } from "./transcribe/search.ts";
import { createSpeller, type Speller } from "./transcribe/speller.ts";
import type { Transcriber } from "./transcribe/transcriber.ts";
import { WordPaths } from "./transcribe/word-paths.ts";
import { createTurns } from "./turns.ts";
import type { Verdict } from "./verdict.ts";
import type { WordEngine } from "./word-engine.ts";

/** So much clearer a call from further back must be: what is nearer has less of others in it. */
const clearerBy = 2;

/** So many places are looked at for a call. */
const mostBeginnings = 3;

/** What two ears are made of. */
export type TwoEarsParts = {
  /** Knows how people write: hears well in noise, and what was meant even where it was no command. */
  readonly quick: Transcriber;
  /** The same, larger: asked where that one is not sure. */
  readonly careful: Transcriber;
  /** Knows how words sound: asked where the first is torn or finds nothing. */
  readonly engine: WordEngine;
  readonly acceptance: Acceptance;
  /** Lets whatever else waits have its turn; between two tokens, so that sound is not kept waiting. */
  readonly breathe: () => Promise<void>;
};

/** While the caller speaks too, the address is looked for this often, in seconds, so that it can fall silent. */
const draftEveryS = 0.6;

/** Commas, a full stop, a letter more: an address is written within so many tokens more than it has. */
const tokensBesideAddress = 4;

/** The shortest sound that is worth taking in, in seconds. */
const shortestS = 0.3;

/** Nobody calls this late in an utterance: from here on speech without the address is not ours, whatever follows. */
const calledWithinS = 3;

/**
 * A recogniser of two engines that err differently. The transcriber takes in the whole utterance and finds the
 * sentences of the grammar that it may have been; where that leaves a doubt, the engine that follows sounds is asked.
 */
export function createTwoEars(parts: TwoEarsParts): Recogniser {
  return new TwoEars(parts);
}

/** What is thought about an utterance up to a pause; idle once somebody speaks on. */
type Thought = {
  readonly pause: number | null;
  readonly glance: Promise<Glance>;
  /** Thought through once, when it is first asked for. */
  readonly verdict: () => Promise<Verdict>;
  /** What it came to before the pause was the end. */
  reached: Verdict | null;
  isIdle: boolean;
};

class TwoEars implements Recogniser {
  private readonly parts: TwoEarsParts;
  private readonly second: SecondOpinion;
  private isCarefulThere = false;
  private isFreed = false;
  /** What follows the small network; null before that is there. */
  private rest: Promise<void> | null = null;
  private engineThere: Promise<void> | null = null;
  private speller: Speller | null = null;
  private expected: Expectation | null = null;
  private paths: WordPaths | null = null;
  private blocks: Float32Array[] = [];
  private samples = 0;
  private draftedAt = 0;
  private thought: Thought | null = null;
  private written: readonly string[] = [];
  /** Where, in samples, a call may begin: at the beginning, and wherever a louder voice did. */
  private beginnings: readonly number[] = [0];
  /** One thought after another: the models take one utterance at a time. */
  private readonly inTurn = createTurns();

  constructor(parts: TwoEarsParts) {
    this.parts = parts;
    this.second = createSecondOpinion(parts.engine, parts.acceptance);
  }

  readonly load = async (): Promise<Result<null, string>> => {
    const { quick } = this.parts;
    const loaded = await quick.load();
    if (!loaded.ok) return loaded;
    this.speller ??= createSpeller(quick.tokens());
    void this.inTurn(quick.warmUp).catch(() => undefined); // whatever is wrong shows when it is used
    // What follows takes some seconds more, and nothing that is said meanwhile waits for it.
    this.engineThere ??= this.second.load();
    this.rest ??= this.engineThere.then(this.loadCareful);
    return loaded;
  };

  readonly whole = async (): Promise<void> => this.rest ?? undefined;

  readonly setGrammar = (what: ListenFor): Promise<Result<null, string>> => {
    this.begin();
    if (this.speller === null) throw new Error("the recogniser was used before it was loaded");
    const automaton = toAutomaton(what);
    if (!automaton.ok) return Promise.resolve(automaton);
    this.expected = expectation(what);
    this.paths = new WordPaths(automaton.value, this.speller);
    return Promise.resolve(ok(null));
  };

  readonly accept = (samples: Float32Array): void => {
    this.blocks.push(samples);
    this.samples += samples.length;
    const isDue = this.samples >= this.draftedAt + draftEveryS * listeningRate;
    const from = this.beginnings.at(-1);
    if (this.expected?.what.mode !== "stop-only" || !isDue || from === undefined) return;
    this.draftedAt = this.samples;
    void this.inTurn(() => this.draft(joinSamples(this.blocks), from));
  };

  readonly mayBegin = (samplesAgo: number): void => {
    this.beginnings = [...this.beginnings, Math.max(0, this.samples - samplesAgo)].slice(-mostBeginnings);
  };

  readonly partial = (): readonly string[] => this.written;

  readonly anticipate: Recogniser["anticipate"] = async (pause) => {
    if (this.thought?.pause !== pause) this.think(pause);
    const { thought, expected } = this;
    const { isAll, isSettled } = (await thought?.glance) ?? nothingSeen;
    const reached = thought?.reached ?? null;
    const certain = isAll && reached !== null && expected !== null ? certainWords(reached, expected) : null;
    if (certain !== null && thought === this.thought) this.written = certain;
    return { words: certain ?? (isSettled ? this.written : []), isAll };
  };

  readonly goOn = (): void => {
    if (this.thought !== null) this.thought.isIdle = true;
  };

  readonly end = async (pause: number | null): Promise<Verdict> => {
    if (this.samples === 0) return chatter;
    if (pause === null || this.thought?.pause !== pause) this.think(pause);
    const verdict = (await this.thought?.verdict()) ?? chatter;
    this.begin();
    return verdict;
  };

  /** Neither engine learns anything here that would have to be forgotten: each hears an utterance as a whole. */
  readonly forget = (): Promise<void> => {
    this.begin();
    return Promise.resolve();
  };

  readonly free = (): void => {
    this.begin();
    this.isFreed = true;
    void this.inTurn(async () => {
      await this.parts.quick.free();
      await this.parts.careful.free();
      await this.engineThere;
      this.parts.engine.free();
    });
  };

  /** Not in turn but for the run that warms it up: it is large, and whatever is said meanwhile does not wait for it. */
  private readonly loadCareful = async (): Promise<void> => {
    const { careful } = this.parts;
    const loaded = await careful.load();
    await this.inTurn(async () => {
      if (this.isFreed) return careful.free();
      if (!loaded.ok) return;
      await careful.warmUp().catch(() => undefined);
      this.isCarefulThere = true;
    });
  };

  private begin(): void {
    this.blocks = [];
    this.samples = 0;
    this.draftedAt = 0;
    this.goOn();
    this.thought = null;
    this.written = [];
    this.beginnings = [0];
  }

  /** What no second look can change is thought through at once, the rest only when the pause has become the end. */
  private think(pause: number | null): void {
    this.goOn();
    const utterance = joinSamples(this.blocks);
    const state: Pick<Thought, "isIdle" | "reached"> = { isIdle: false, reached: null };
    const glance = this.inTurn(() => this.look(utterance, () => this.breatheUnless(state)));
    const verdict = once(async () => this.inTurn((await glance).verdict));
    this.thought = Object.assign(state, { pause, glance, verdict });
    // `end` asks again, and fails then.
    void glance
      .then(async ({ isEnough, isAll }) => {
        if ((isEnough || isAll) && !state.isIdle) state.reached = await verdict();
      })
      .catch(() => undefined);
  }

  /** @returns whether the thought has become idle meanwhile */
  private async breatheUnless(thought: { readonly isIdle: boolean }): Promise<boolean> {
    await this.parts.breathe();
    return thought.isIdle;
  }

  private async look(utterance: Float32Array, isGivenUp: () => Promise<boolean>): Promise<Glance> {
    const { expected, paths, speller, second } = this;
    if (expected === null || paths === null || speller === null) return nothingSeen;
    const { quick } = this.parts;
    const careful = this.isCarefulThere ? this.parts.careful : null;
    const what: Considering = { quick, careful, second, speller, paths, expected, isGivenUp };
    let best: Glance | null = null;
    for (const from of this.beginnings.toReversed()) {
      const piece = utterance.subarray(from);
      if (piece.length < shortestS * listeningRate) continue;
      const glance = await glanceAt(piece, what);
      if (best === null || isClearer(glance, best)) best = glance;
      if (best.claim !== null && best.claim >= -clearerBy) break;
      const isTheirs = glance.claim === null && isTooLate(piece.length);
      if (isTheirs && expected.what.mode !== "open") this.forgetBeginning(from);
    }
    const seen = best ?? nothingSeen;
    this.written = seen.words;
    return seen;
  }

  private forgetBeginning(at: number): void {
    this.beginnings = this.beginnings.filter((each) => each !== at);
  }

  private async draft(utterance: Float32Array, from: number): Promise<void> {
    const { expected, paths, speller } = this;
    if (expected === null || paths === null || speller === null) return;
    const { quick, breathe } = this.parts;
    const address = `▁${expected.address.join("▁")}`;
    const longest = (speller.spell(address)?.length ?? address.length) + tokensBesideAddress;
    const sound = await quick.takeIn(utterance.subarray(from));
    const isGivenUp = async (): Promise<boolean> => {
      await breathe();
      return this.samples < utterance.length;
    };
    const settings = { ...freeSearch, longest, speechS: 0, address: [], isAddressed: false, isGivenUp };
    const { free } = await search(sound.write(), paths, quick.tokens(), settings);
    if (this.samples < utterance.length) return;
    const words = wordsOf(free.text, expected);
    const isCall = isAddressed(expected, words);
    this.written = isCall ? expected.address : [];
    if (!isCall && isTooLate(utterance.length - from)) this.forgetBeginning(from);
  }
}

const isClearer = ({ claim }: Glance, than: Glance): boolean =>
  claim !== null && (than.claim === null || claim > than.claim + clearerBy);

/** Whether nobody will call any more who has talked for so many samples. */
const isTooLate = (samples: number): boolean => samples > calledWithinS * listeningRate;

const chatter: Verdict = { kind: "none", why: "chatter" };

/** Made at the first call, the same promise ever after. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null;
  return () => (made ??= make());
}
