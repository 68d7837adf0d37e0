import type { KaldiRecognizer, Model } from "vosk-browser";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { HeardWord, Hypothesis } from "../../core/speech/word-engine.ts";
import { listeningRate } from "../../core/speech/samples.ts";

/** Beyond this a final result is of no use any more: the engine hangs, or the machine is far too slow for the model. */
const answerLimitMs = 10_000;

type VoskWord = {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  readonly conf: number;
};

/**
 * One recogniser of the engine for one list of words, from its making to its removal. The engine answers in order,
 * each block of sound with one message; that is how the answer to `final` is told from the others.
 */
export class VoskStream {
  private readonly engine: KaldiRecognizer;
  /** What the engine ended by itself in the middle of an utterance. */
  private earlier: readonly HeardWord[] = [];
  private partialWords: readonly string[] = [];
  private samplesInAll = 0;
  /** At the first sample of the utterance. */
  private startS = 0;
  /** An utterance has begun and not ended. */
  isOpen = false;
  /** Blocks that the engine has not answered yet. */
  private unanswered = 0;
  private settle: ((words: readonly HeardWord[]) => void) | null = null;
  private giveUp: ((fault: Error) => void) | null = null;
  private fault: Error | null = null;

  private constructor(engine: KaldiRecognizer) {
    this.engine = engine;
    engine.setWords(true);
    engine.on("partialresult", (message) => {
      if (message.event !== "partialresult") return;
      this.unanswered--;
      this.partialWords = wordsOf(message.result.partial);
    });
    engine.on("result", (message) => {
      // The engine leaves `result` out where it heard nothing, whatever its types say.
      if (message.event === "result")
        this.take((message.result as { readonly result?: readonly VoskWord[] }).result ?? []);
    });
    engine.on("error", (message) => {
      if (message.event === "error") this.fail(new Error(plain(message.error)));
    });
  }

  /** Makes one and waits until the engine has it. Error: one sentence. */
  static async make(model: Model, wordList: readonly string[]): Promise<Result<VoskStream, string>> {
    const stream = new VoskStream(new model.KaldiRecognizer(listeningRate, JSON.stringify(wordList)));
    try {
      // The engine says nothing when it has made one, and only an error when it has not.
      await stream.ask();
      return ok(stream);
    } catch (thrown) {
      stream.remove();
      const reason = thrown instanceof Error ? thrown.message : String(thrown);
      return err(`The Vosk engine does not take what can be said now (${reason}). Turn listening on again.`);
    }
  }

  /** @param samples at 16 kHz, in [-1, 1] */
  accept(samples: Float32Array): void {
    if (!this.isOpen) this.startS = this.samplesInAll / listeningRate;
    this.isOpen = true;
    this.samplesInAll += samples.length;
    this.unanswered++;
    this.engine.acceptWaveformFloat(samples, listeningRate);
  }

  partial(): readonly string[] {
    return [...this.earlier.map(({ word }) => word), ...this.partialWords];
  }

  /** Ends the utterance; without words where none is open. Throws where the engine has failed or does not answer. */
  async final(): Promise<Hypothesis> {
    if (!this.isOpen) return { words: [] };
    this.isOpen = false;
    const last = await this.ask();
    const words = [...this.earlier, ...last];
    this.earlier = [];
    this.partialWords = [];
    return { words };
  }

  /** Gives its memory back; nothing may be called afterwards. */
  remove(): void {
    this.giveUp?.(new Error("it was removed"));
    this.engine.remove();
  }

  private ask(): Promise<readonly HeardWord[]> {
    if (this.fault !== null) return Promise.reject(this.fault);
    return new Promise<readonly HeardWord[]>((resolve, reject) => {
      const limit = setTimeout(() => reject(new Error("the engine does not answer")), answerLimitMs);
      this.settle = (words) => {
        clearTimeout(limit);
        resolve(words);
      };
      this.giveUp = (fault) => {
        clearTimeout(limit);
        reject(fault);
      };
      this.engine.retrieveFinalResult();
    }).finally(() => (this.settle = this.giveUp = null));
  }

  private take(result: readonly VoskWord[]): void {
    const words = result.map(({ word, start, end, conf }): HeardWord => {
      // It counts from the first sample that it was ever given.
      const startS = Math.max(0, start - this.startS);
      return { word: asFiller(word), startS, lengthS: end - start, probability: conf };
    });
    if (this.unanswered === 0) return this.settle?.(words);
    this.unanswered--;
    this.earlier = [...this.earlier, ...words];
    this.partialWords = [];
  }

  private fail(fault: Error): void {
    this.fault = fault;
    this.giveUp?.(fault);
  }
}

const wordsOf = (text: string): readonly string[] =>
  text
    .split(" ")
    .filter((word) => word !== "")
    .map(asFiller);

/** What the engine calls unknown is chatter: it must not pass for silence. */
function asFiller(word: string): string {
  return word === "[unk]" ? "~unknown" : word;
}

/** The engine's errors carry a trace after the first line. */
const plain = (error: string): string =>
  (error.split("\n")[0] ?? error).replace(/^Recognizer \(id: [^)]*\): /, "");
