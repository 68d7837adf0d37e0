import { err, ok, type Result } from "../units/result.ts";
import { chatterWords } from "./chatter.ts";
import { toJsgf } from "./jsgf.ts";
import { formatPronunciation, parsePronunciation } from "./phones.ts";
import { type DictionaryLookup, pronounce } from "./pronounce.ts";
import type { HeardWord, Hypothesis, ListenFor, Recogniser } from "./recogniser.ts";
import { createRoomTone } from "./room-tone.ts";
import { listeningRate } from "./samples.ts";
import { spokenWords } from "./spoken-words.ts";
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
export type EmbeddedDecoder = {
  initialize: () => Promise<unknown>;
  start: () => void;
  stop: () => void;
  reinitialize_audio: () => Promise<void>;
  process_audio: (samples: Float32Array, withoutSearch: boolean, isWhole: boolean) => number;
  get_text: () => string;
  get_alignment: () => Segment;
  lookup_word: (word: string) => string | null;
  add_words: (...words: [string, string][]) => void;
  set_grammar: (jsgf: string) => void;
  delete: () => void;
};

/**
 * Mean cepstrum of speech before the engine has heard any: of ten recordings of people (Debian's
 * pocketsphinx-testdata and asterisk-core-sounds-en-wav), as the engine itself reports it. The engine's own guess
 * lies so far from speech that the first sentence of an evening was often taken for chatter.
 */
const usualCepstrum = "41.2,-2.6,2,-1.6,1.5,-5.2,-8.2,4.4,-4.1,-2.9,0.8,6.4,6.9";

/** Settings of the decoder: its wide beams keep the right sentence alive in noise, where narrow ones lose it. */
export const decoderConfig = {
  samprate: listeningRate,
  bestpath: false,
  beam: 1e-100,
  wbeam: 1e-100,
  pbeam: 1e-100,
  cmninit: usualCepstrum,
  loglevel: "FATAL",
} as const;

/**
 * The recogniser that carries its own model, behind our interface. One decoder lives as long as this does
 * (making and deleting them leaks); only its grammar is swapped.
 * @param createDecoder makes the decoder for `decoderConfig`; Node and the browser load the engine differently
 */
export function createEmbeddedRecogniser(createDecoder: () => Promise<EmbeddedDecoder>): Recogniser {
  let decoder: EmbeddedDecoder | null = null;
  let isOpen = false;
  let onRoomTone = createRoomTone();
  const loaded = (): EmbeddedDecoder => {
    if (decoder === null) throw new Error("the recogniser was used before it was loaded");
    return decoder;
  };
  const close = (): void => {
    if (isOpen) loaded().stop();
    isOpen = false;
  };
  return {
    load: async () => {
      if (decoder !== null) return ok(null);
      try {
        const made = await createDecoder();
        await made.initialize();
        made.add_words(...chatterWords.map(({ word, phone }): [string, string] => [word, phone]));
        decoder = made;
        return ok(null);
      } catch (thrown) {
        return err(
          `The speech recogniser could not be loaded (${reason(thrown)}). Type or tap instead, or load the page again.`,
        );
      }
    },
    setGrammar: (listenFor) => {
      close();
      return Promise.resolve(swapGrammar(loaded(), listenFor));
    },
    accept: (samples) => {
      if (!isOpen) {
        loaded().start();
        onRoomTone = createRoomTone();
      }
      isOpen = true;
      loaded().process_audio(onRoomTone(samples), false, false);
    },
    partial: () => (isOpen ? splitWords(loaded().get_text()) : []),
    end: () => {
      if (!isOpen) return Promise.resolve({ words: [] });
      close();
      return Promise.resolve(hypothesisOf(loaded()));
    },
    reconsider: async (utterance) => {
      close();
      // Streaming fixes the engine to a running mean; only begun anew does it take the mean of this utterance alone.
      await loaded().reinitialize_audio();
      loaded().start();
      loaded().process_audio(createRoomTone()(utterance), false, true);
      loaded().stop();
      const hypothesis = hypothesisOf(loaded());
      await loaded().reinitialize_audio();
      return hypothesis;
    },
    forget: async () => {
      close();
      await loaded().reinitialize_audio();
    },
    free: () => {
      close();
      decoder?.delete();
      decoder = null;
    },
  };
}

function swapGrammar(decoder: EmbeddedDecoder, { grammar, address, mode }: ListenFor): Result<null, string> {
  const jsgf = toJsgf(grammar, { address, mode, chatter: "absorb" });
  if (!jsgf.ok) return jsgf;
  const lookup: DictionaryLookup = (word) => {
    const found = decoder.lookup_word(word);
    return found === null ? null : parsePronunciation(found);
  };
  // One word missing from the dictionary would make the whole grammar fail.
  const unknown = [...vocabulary(grammar), ...spokenWords(address ?? "")].filter(
    (word) => decoder.lookup_word(word) === null,
  );
  const added = [...new Set(unknown)].flatMap((word) =>
    pronounce(word, lookup).map((way, at): [string, string] => [
      at === 0 ? word : `${word}(${at + 1})`,
      formatPronunciation(way),
    ]),
  );
  try {
    if (added.length > 0) decoder.add_words(...added);
    decoder.set_grammar(jsgf.value);
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
