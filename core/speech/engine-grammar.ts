import type { Automaton } from "./automaton.ts";
import { chatterWords } from "./chatter.ts";

/**
 * The part of soundswallower's compiled module that builds a grammar state by state. Its own JavaScript offers only
 * JSGF, which is expanded place by place; these functions are what that calls in the end. Numbers are addresses.
 */
export type EngineModule = {
  readonly HEAPU8: Uint8Array;
  readonly _malloc: (bytes: number) => number;
  readonly _free: (address: number) => void;
  readonly _decoder_logmath: (decoder: number) => number;
  readonly _logmath_log: (logmath: number, probability: number) => number;
  readonly _fsg_model_init: (name: number, logmath: number, languageWeight: number, states: number) => number;
  readonly _fsg_model_word_add: (model: number, word: number) => number;
  readonly _fsg_model_trans_add: (
    model: number,
    from: number,
    to: number,
    logProbability: number,
    word: number,
  ) => void;
  readonly _fsg_set_states: (model: number, start: number, end: number) => void;
  readonly _decoder_set_fsg: (decoder: number, model: number) => number;
};

/** The part of its decoder that this needs. */
export type EngineDecoder = {
  /** Address of the decoder in the module's memory. */
  readonly cdecoder: number;
  readonly get_config: (name: string) => unknown;
};

/**
 * The price of a word, whichever and wherever. Shared out among the words that may come next, as JSGF does, "forty"
 * pays for "forty one" to "forty nine" and "fourteen" does not: 7 of 147 sentences were taken for their teens.
 */
const wordProbability = 1 / 12;

/**
 * Lets the engine listen for an automaton's sentences and, beside them, for chatter. Throws where the engine refuses.
 * The engine knows one end only, so an arc into a state that may end a sentence is laid twice.
 */
export function setAutomaton(
  engine: EngineModule,
  decoder: EngineDecoder,
  { start, states }: Automaton,
): void {
  const logmath = engine._decoder_logmath(decoder.cdecoder);
  const weight = Number(decoder.get_config("lw"));
  const log = (probability: number): number => Math.trunc(engine._logmath_log(logmath, probability) * weight);
  const chatter = states.length;
  const end = states.length + 1;
  const model = withText(engine, "kitchen", (name) =>
    engine._fsg_model_init(name, logmath, weight, states.length + 2),
  );
  const numbers = new Map<string, number>();
  const numberOf = (word: string): number => {
    const number =
      numbers.get(word) ?? withText(engine, word, (text) => engine._fsg_model_word_add(model, text));
    numbers.set(word, number);
    return number;
  };
  const lay = (from: number, to: number, probability: number, word: string): void =>
    engine._fsg_model_trans_add(model, from, to, log(probability), numberOf(word));
  states.forEach(({ arcs }, from) => {
    for (const { word, to } of arcs) {
      const next = states[to];
      if (next !== undefined && next.arcs.length > 0) lay(from, to, wordProbability, word);
      if (next?.isEnd === true) lay(from, end, wordProbability, word);
    }
  });
  const soundProbability = 1 / chatterWords.length;
  for (const { word } of chatterWords) {
    for (const from of [start, chatter]) {
      for (const to of [chatter, end]) lay(from, to, soundProbability, word);
    }
  }
  engine._fsg_set_states(model, start, end);
  if (engine._decoder_set_fsg(decoder.cdecoder, model) < 0) throw new Error("the engine refuses the grammar");
}

/** Lends a text to the engine's memory for one call. */
function withText(engine: EngineModule, text: string, use: (address: number) => number): number {
  const bytes = utf8(`${text}\0`);
  const address = engine._malloc(bytes.length);
  engine.HEAPU8.set(bytes, address);
  const answer = use(address);
  engine._free(address);
  return answer;
}

/** The bytes of a text; core has no TextEncoder. */
function utf8(text: string): Uint8Array {
  const bytes = encodeURIComponent(text).matchAll(/%([0-9A-F]{2})|./g);
  return Uint8Array.from(bytes, ([all, hex]) =>
    hex === undefined ? all.charCodeAt(0) : Number.parseInt(hex, 16),
  );
}
