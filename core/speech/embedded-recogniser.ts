import { err, ok, type Result } from "../units/result.ts";
import { toAutomaton } from "./automaton.ts";
import { chatterWords } from "./chatter.ts";
import { type EngineDecoder, type EngineModule, setAutomaton } from "./engine-grammar.ts";
import { formatPronunciation, parsePronunciation } from "./phones.ts";
import { type DictionaryLookup, pronounce } from "./pronounce.ts";
import type { ListenFor } from "./recogniser.ts";
import type { HeardWord, Hypothesis, WordEngine } from "./word-engine.ts";
import { createRoomTone } from "./room-tone.ts";
import { listeningRate } from "./samples.ts";
import { vocabulary } from "./vocabulary.ts";

/** A stretch of an alignment: its text, beginning and length in seconds, probability, and its parts. */
export type Segment = {
  readonly t: string;
  readonly b: number;
  readonly d: number;
  readonly p: number;
  readonly w?: readonly Segment[];
};

/** The part of soundswallower's decoder that we call. */
export type EmbeddedDecoder = EngineDecoder & {
  initialize: () => Promise<unknown>;
  start: () => void;
  stop: () => void;
  reinitialize_audio: () => Promise<void>;
  process_audio: (samples: Float32Array, withoutSearch: boolean, isWhole: boolean) => number;
  get_text: () => string;
  get_alignment: () => Segment;
  lookup_word: (word: string) => string | null;
  add_words: (...words: [string, string][]) => void;
  delete: () => void;
};

/**
 * Mean cepstrum of speech before the engine has heard any: of ten recordings of people (Debian's
 * pocketsphinx-testdata and asterisk-core-sounds-en-wav), as the engine itself reports it. The engine's own guess
 * lies so far from speech that the first sentence of an evening was often taken for chatter.
 */
const usualCepstrum = "41.2,-2.6,2,-1.6,1.5,-5.2,-8.2,4.4,-4.1,-2.9,0.8,6.4,6.9";

/**
 * Settings of the decoder: its wide beams keep the right sentence alive in noise, where narrow ones lose it. So many
 * states a frame are enough: of 13 sentences each in the quiet, under fan and tap (10 dB) 13, 12 and 4 were right with
 * them and 13, 12 and 2 without such a limit, in 0.6 instead of 1.9 s under the fan.
 */
const decoderConfig = {
  samprate: listeningRate,
  bestpath: false,
  beam: 1e-100,
  wbeam: 1e-100,
  pbeam: 1e-100,
  maxhmmpf: 3000,
  cmninit: usualCepstrum,
  loglevel: "FATAL",
} as const;

/** The engine's module, compiled; it makes decoders and builds their grammars. */
export type EmbeddedEngine = EngineModule & {
  readonly Decoder: new (config: Record<string, unknown>) => EmbeddedDecoder;
};

/**
 * The recogniser that carries its own model, behind our interface. One decoder lives as long as this does
 * (making and deleting them leaks); only its grammar is swapped.
 * @param loadEngine loads the engine; Node and the browser do it differently
 */
export function createEmbeddedRecogniser(loadEngine: () => Promise<EmbeddedEngine>): WordEngine {
  return new EmbeddedRecogniser(loadEngine);
}

class EmbeddedRecogniser implements WordEngine {
  private readonly loadEngine: () => Promise<EmbeddedEngine>;
  private engine: EmbeddedEngine | null = null;
  private decoder: EmbeddedDecoder | null = null;
  private isOpen = false;
  private onRoomTone = createRoomTone();

  constructor(loadEngine: () => Promise<EmbeddedEngine>) {
    this.loadEngine = loadEngine;
  }

  readonly load: WordEngine["load"] = async () => {
    if (this.decoder !== null) return ok(null);
    try {
      this.engine = await this.loadEngine();
      const made = new this.engine.Decoder({ ...decoderConfig });
      await made.initialize();
      made.add_words(...chatterWords.map(({ word, phone }): [string, string] => [word, phone]));
      this.decoder = made;
      return ok(null);
    } catch (thrown) {
      return err(
        `The speech recogniser could not be loaded (${reason(thrown)}). Type or tap instead, or load the page again.`,
      );
    }
  };

  readonly setGrammar: WordEngine["setGrammar"] = (listenFor) => {
    this.close();
    if (this.engine === null) throw new Error("the recogniser was used before it was loaded");
    return Promise.resolve(swapGrammar(this.engine, this.loaded(), listenFor));
  };

  readonly accept: WordEngine["accept"] = (samples) => {
    if (!this.isOpen) {
      this.loaded().start();
      this.onRoomTone = createRoomTone();
    }
    this.isOpen = true;
    this.loaded().process_audio(this.onRoomTone(samples), false, false);
  };

  readonly partial: WordEngine["partial"] = () => (this.isOpen ? splitWords(this.loaded().get_text()) : []);

  readonly end: WordEngine["end"] = () => {
    if (!this.isOpen) return Promise.resolve({ words: [] });
    this.close();
    return Promise.resolve(hypothesisOf(this.loaded()));
  };

  readonly reconsider: WordEngine["reconsider"] = async (utterance) => {
    this.close();
    const decoder = this.loaded();
    // Streaming fixes the engine to a running mean; only begun anew does it take the mean of this utterance alone.
    await decoder.reinitialize_audio();
    decoder.start();
    decoder.process_audio(createRoomTone()(utterance), false, true);
    decoder.stop();
    const hypothesis = hypothesisOf(decoder);
    await decoder.reinitialize_audio();
    return hypothesis;
  };

  readonly forget: WordEngine["forget"] = async () => {
    this.close();
    await this.loaded().reinitialize_audio();
  };

  readonly free: WordEngine["free"] = () => {
    this.close();
    this.decoder?.delete();
    this.decoder = null;
  };

  private loaded(): EmbeddedDecoder {
    if (this.decoder === null) throw new Error("the recogniser was used before it was loaded");
    return this.decoder;
  }

  private close(): void {
    if (this.isOpen) this.loaded().stop();
    this.isOpen = false;
  }
}

function swapGrammar(
  engine: EmbeddedEngine,
  decoder: EmbeddedDecoder,
  what: ListenFor,
): Result<null, string> {
  const automaton = toAutomaton(what);
  if (!automaton.ok) return automaton;
  const lookup: DictionaryLookup = (word) => {
    const found = decoder.lookup_word(word);
    return found === null ? null : parsePronunciation(found);
  };
  // One word missing from the dictionary would make the whole grammar fail.
  const unknown = [...vocabulary(what)].filter((word) => decoder.lookup_word(word) === null);
  const added = unknown.flatMap((word) =>
    pronounce(word, lookup).map((way, at): [string, string] => [
      at === 0 ? word : `${word}(${at + 1})`,
      formatPronunciation(way),
    ]),
  );
  try {
    if (added.length > 0) decoder.add_words(...added);
    setAutomaton(engine, decoder, automaton.value);
    return ok(null);
  } catch (thrown) {
    return err(
      `The recogniser does not take the grammar of this moment (${reason(thrown)}). Type or tap instead.`,
    );
  }
}

function hypothesisOf(decoder: EmbeddedDecoder): Hypothesis {
  if (decoder.get_text() === "") return { words: [] };
  const words = decoder.get_alignment().w ?? [];
  return {
    words: words.map(({ t, b, d, p }): HeardWord => ({ word: t, startS: b, lengthS: d, probability: p })),
  };
}

function splitWords(text: string): readonly string[] {
  return text.split(" ").filter((word) => word !== "");
}

function reason(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
