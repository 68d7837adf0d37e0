import type { ListeningMode, Recogniser } from "../../core/speech/recogniser.ts";
import { createTwoEars } from "../../core/speech/two-ears.ts";
import { err } from "../../core/units/result.ts";
import type { Verdict } from "../../core/speech/verdict.ts";
import { type Beliefs, createFakeTranscriber, type FakeTranscriber } from "./fake-transcriber.ts";
import { createFakeWordEngine, type FakeWordEngine } from "./fake-word-engine.ts";
import { grammarOf, listenTo } from "./grammars.ts";

export const fifteen = "set a timer for fifteen minutes";
export const fifty = "set a timer for fifty minutes";
export const grammar = grammarOf("next step", "stop", fifteen, fifty);
const acceptance = { address: 0.5, addressed: 0.5, open: 0.5, stopOnly: 0.5 };

/** Two ears of which everything is known. */
export type Ears = {
  readonly ears: Recogniser;
  readonly transcriber: FakeTranscriber;
  /** The large network; it is not there unless it was asked for. */
  readonly careful: FakeTranscriber;
  readonly engine: FakeWordEngine;
};

/** A turn for others, as in a browser. */
export const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Makes them, loaded, with a grammar to listen for. */
export async function twoEars(
  mode: ListeningMode = "addressed",
  { breathe = () => Promise.resolve(), hasCareful = false } = {},
): Promise<Ears> {
  const [transcriber, careful, engine] = [
    createFakeTranscriber(),
    createFakeTranscriber(),
    createFakeWordEngine(),
  ];
  const large = hasCareful ? careful : { ...careful, load: () => Promise.resolve(err("too little memory")) };
  const ears = createTwoEars({ quick: transcriber, careful: large, engine, acceptance, breathe });
  await ears.load();
  await ears.whole();
  await ears.setGrammar(listenTo(grammar, { address: "listen kitchen", mode }));
  return { ears, transcriber, careful, engine };
}

/** So many seconds in blocks as they come; a tone that is loud for the first second and then a pause. */
export function play(ears: Recogniser, seconds: number, room = 1e-4): void {
  for (let at = 0; at < seconds * 50; at++)
    ears.accept(Float32Array.from({ length: 320 }, (_, n) => (at < 50 ? 0.1 : room) * Math.sin(n * 0.3)));
}

/** What an utterance that is believed to be this comes to, in a quiet room or in a noisy one. */
export async function hear(
  { ears, transcriber }: Ears,
  beliefs: Beliefs,
  { seconds = 2, isNoisy = false } = {},
): Promise<Verdict> {
  transcriber.willBelieve(beliefs);
  play(ears, seconds, isNoisy ? 0.01 : 1e-4);
  return ears.end(null);
}
