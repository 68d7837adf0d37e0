import { ok, type Result } from "../units/result.ts";
import { type Acceptance, judge } from "./acceptance.ts";
import { toAutomaton } from "./automaton.ts";
import { withoutFillers } from "./chatter.ts";
import { type Expectation, expectation, isAddressed } from "./expectation.ts";
import type { Grammar } from "./grammar.ts";
import type { ListenFor, Recogniser } from "./recogniser.ts";
import { joinSamples, listeningRate } from "./samples.ts";
import { type Opinion, opinionOf, soundsCalled, wordsOf } from "./transcribe/opinion.ts";
import { essence } from "./transcribe/same-words.ts";
import { type Found, freeSearch, patientSearch, quickSearch, search } from "./transcribe/search.ts";
import { spokenSeconds } from "./transcribe/spoken-seconds.ts";
import { tokenTree, type TokenTree } from "./transcribe/token-tree.ts";
import type { TakenIn, Transcriber } from "./transcribe/transcriber.ts";
import { WordPaths } from "./transcribe/word-paths.ts";
import type { Verdict } from "./verdict.ts";
import type { WordEngine } from "./word-engine.ts";

/** What two ears are made of. */
export type TwoEarsParts = {
  /** Knows how people write: hears well in noise, and what was meant even where it was no command. */
  readonly transcriber: Transcriber;
  /** Knows how words sound: asked where the first is torn or finds nothing. */
  readonly engine: WordEngine;
  readonly acceptance: Acceptance;
  /** While somebody speaks, what was said so far is written down this often, in seconds; null for never. */
  readonly draftEveryS: number | null;
};

/** The shortest sound that is worth taking in, in seconds. */
const shortestS = 0.3;

/** Nobody calls this late in an utterance: from here on speech without the address is not ours, whatever follows. */
const calledWithinS = 3;

/** A sentence that fits as well as this needs no second ear. */
const sureFit = 6;

const chatter: Verdict = { kind: "none", why: "chatter" };
const doubtful: Verdict = { kind: "none", why: "doubtful" };

/**
 * A recogniser of two engines that err differently. The transcriber takes in the whole utterance and finds the
 * sentences of the grammar that it may have been; where that leaves a doubt, the engine that follows sounds is asked.
 */
export function createTwoEars(parts: TwoEarsParts): Recogniser {
  return new TwoEars(parts);
}

type Thought = { readonly pause: number | null; readonly verdict: Promise<Verdict> };

class TwoEars implements Recogniser {
  private readonly parts: TwoEarsParts;
  private tree: TokenTree | null = null;
  private expected: Expectation | null = null;
  private paths: WordPaths | null = null;
  private blocks: Float32Array[] = [];
  private samples = 0;
  private thought: Thought | null = null;
  private written: readonly string[] = [];
  private draftedAt = 0;
  private isOthers = false;
  /** One thought after another: the models take one utterance at a time. */
  private last: Promise<unknown> = Promise.resolve();
  /** What the second engine listens for. */
  private engineHas: ListenFor | null = null;

  constructor(parts: TwoEarsParts) {
    this.parts = parts;
  }

  readonly load = async (): Promise<Result<null, string>> => {
    const loaded = await this.parts.transcriber.load();
    if (!loaded.ok) return loaded;
    this.tree ??= tokenTree(this.parts.transcriber.tokens());
    return this.parts.engine.load();
  };

  readonly setGrammar = (what: ListenFor): Promise<Result<null, string>> => {
    this.begin();
    if (this.tree === null) throw new Error("the recogniser was used before it was loaded");
    const automaton = toAutomaton(what);
    if (!automaton.ok) return Promise.resolve(automaton);
    this.expected = expectation(what);
    this.paths = new WordPaths(automaton.value, this.tree);
    return Promise.resolve(ok(null));
  };

  readonly accept = (samples: Float32Array): void => {
    this.blocks.push(samples);
    this.samples += samples.length;
    const { draftEveryS } = this.parts;
    if (draftEveryS === null || this.isOthers || this.samples - this.draftedAt < draftEveryS * listeningRate)
      return;
    this.draftedAt = this.samples;
    void this.inTurn(() => this.draft(joinSamples(this.blocks)));
  };

  readonly partial = (): readonly string[] => this.written;

  readonly anticipate = async (pause: number): Promise<readonly string[]> => {
    if (this.thought?.pause !== pause) this.think(pause);
    await this.thought?.verdict;
    return this.written;
  };

  readonly end = async (pause: number | null): Promise<Verdict> => {
    if (this.samples === 0) return chatter;
    if (pause === null || this.thought?.pause !== pause) this.think(pause);
    const verdict = (await this.thought?.verdict) ?? chatter;
    this.begin();
    return verdict;
  };

  readonly forget = async (): Promise<void> => {
    this.begin();
    await this.inTurn(() => this.parts.engine.forget());
  };

  readonly free = (): void => {
    this.begin();
    void this.inTurn(async () => {
      await this.parts.transcriber.free();
      this.parts.engine.free();
    });
  };

  private begin(): void {
    this.blocks = [];
    this.samples = 0;
    this.thought = null;
    this.written = [];
    this.draftedAt = 0;
    this.isOthers = false;
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = this.last.then(work);
    this.last = done.catch(() => undefined);
    return done;
  }

  private think(pause: number | null): void {
    const utterance = joinSamples(this.blocks);
    this.thought = { pause, verdict: this.inTurn(() => this.consider(utterance)) };
  }

  private async draft(utterance: Float32Array): Promise<void> {
    const { expected, paths } = this;
    if (expected === null || paths === null) return;
    const sound = await this.parts.transcriber.takeIn(utterance);
    const found = await this.search(sound, paths, { ...freeSearch, speechS: 0, addressWords: 0 });
    this.written = wordsOf(found.free.text, expected);
  }

  private search(sound: TakenIn, paths: WordPaths, settings: Parameters<typeof search>[3]): Promise<Found> {
    return search(sound.write(), paths, this.parts.transcriber.tokens(), settings);
  }

  private async consider(utterance: Float32Array): Promise<Verdict> {
    const { expected, paths } = this;
    const tooShort = utterance.length < shortestS * listeningRate;
    if (expected === null || paths === null || tooShort || this.isOthers) return chatter;
    const sound = await this.parts.transcriber.takeIn(utterance);
    const known = { speechS: spokenSeconds(utterance), addressWords: expected.address.length };
    let found = await this.search(sound, paths, { ...quickSearch, ...known });
    let opinion = opinionOf(found, expected);
    const { text } = found.free;
    const mayBeOurs = expected.what.mode !== "addressed" || text === "" || soundsCalled(text, expected);
    if (opinion.kind === "other" && !mayBeOurs) {
      this.isOthers = utterance.length > calledWithinS * listeningRate;
      return chatter;
    }
    if (opinion.kind !== "clear") {
      found = await this.search(sound, paths, { ...patientSearch, ...known });
      opinion = opinionOf(found, expected);
    }
    this.written = opinion.kind === "clear" ? opinion.words : wordsOf(found.free.text, expected);
    return this.verdict(opinion, utterance, expected);
  }

  private async verdict(opinion: Opinion, utterance: Float32Array, expected: Expectation): Promise<Verdict> {
    switch (opinion.kind) {
      case "clear":
        return opinion.fit <= sureFit
          ? verdictFor(opinion.words, opinion.fit, [], expected)
          : this.confirmed(opinion.words, opinion.fit, utterance, expected);
      case "torn": {
        const between = opinion.between.map(({ words }) => words);
        const [best = [], ...rivals] = between;
        const sounded = await this.soundsLike(utterance, grammarOfSentences(between), expected);
        const isAgreed = sounded !== null && essence(sounded) === essence(best);
        return verdictFor(best, opinion.fit, isAgreed ? [] : rivals, expected);
      }
      case "other":
        return this.rescue(utterance, expected);
    }
  }

  /** A sentence that fits only somewhat: the other ear hears the whole grammar, and may be of another opinion. */
  private async confirmed(
    words: readonly string[],
    fit: number,
    utterance: Float32Array,
    expected: Expectation,
  ): Promise<Verdict> {
    const other = await this.rescue(utterance, expected);
    const own = verdictFor(words, fit, [], expected);
    if (other.kind !== "command" || own.kind !== "command") return own;
    const isSame = essence(other.words) === essence(own.words);
    return isSame ? own : { ...own, rivals: [other.words] };
  }

  /** Nothing was found, though the cook may have called: the other ear hears the whole grammar. */
  private async rescue(utterance: Float32Array, expected: Expectation): Promise<Verdict> {
    if (expected.what.mode !== "addressed") return doubtful;
    const { engine, acceptance } = this.parts;
    if (!(await this.giveEngine(expected.what)).ok) return doubtful;
    const verdict = judge(
      await engine.reconsider(utterance),
      expected.what.address,
      expected.what.mode,
      acceptance,
    );
    return verdict.kind === "none" ? doubtful : verdict;
  }

  private async soundsLike(
    utterance: Float32Array,
    grammar: Grammar,
    { what }: Expectation,
  ): Promise<readonly string[] | null> {
    const listenFor: ListenFor = { ...what, grammar, address: null, mode: "open", stopSentences: [] };
    if (!(await this.giveEngine(listenFor)).ok) return null;
    const { words } = await this.parts.engine.reconsider(utterance);
    return withoutFillers(words.map(({ word }) => word));
  }

  private async giveEngine(what: ListenFor): Promise<Result<null, string>> {
    if (this.engineHas === what) return ok(null);
    const set = await this.parts.engine.setGrammar(what);
    this.engineHas = set.ok ? what : null;
    return set;
  }
}

function grammarOfSentences(sentences: readonly (readonly string[])[]): Grammar {
  const of = sentences.map((words) => ({ kind: "words", text: words.join(" ") }) as const);
  return { root: "sentence", rules: new Map([["sentence", { kind: "choice", of }]]) };
}

function verdictFor(
  words: readonly string[],
  fit: number,
  rivals: readonly (readonly string[])[],
  expected: Expectation,
): Verdict {
  const addressed = isAddressed(expected, words);
  const bare = (sentence: readonly string[]): readonly string[] =>
    isAddressed(expected, sentence) ? sentence.slice(expected.address.length) : sentence;
  if (bare(words).length === 0) return { kind: "address-only" };
  return {
    kind: "command",
    words: bare(words),
    confidence: Math.exp(-Math.max(0, fit) / 6),
    addressed,
    rivals: rivals.map(bare).filter((rival) => rival.length > 0),
  };
}
