import type { KaldiRecognizer, Model } from "vosk-browser";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { Acceptance } from "../../core/speech/acceptance.ts";
import type { HeardWord, Hypothesis, Recogniser } from "../../core/speech/recogniser.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { reachableRules } from "../../core/speech/check-grammar.ts";
import { toWordList } from "../../core/speech/word-list.ts";

/** Its words carry a true confidence each; the limits are cautious guesses, not measured for want of a model. */
export const voskAcceptance: Acceptance = { address: 0.5, addressed: 0.3, open: 0.6, stopOnly: 0.6 };

/** Unpacking a model of 40 MB takes seconds; beyond this something is wrong, and the engine never says so itself. */
const loadLimitMs = 90_000;
/** A final result comes within a moment of its request, or not at all. */
const finalLimitMs = 3_000;

/**
 * The Vosk engine behind our interface, for a model that the cook has put on the server.
 * @param modelUrl a tar.gz; versioned by its hash, because a bad one is kept by the browser under its address
 */
export function createVoskRecogniser(modelUrl: string): Recogniser {
  return new VoskRecogniser(modelUrl);
}

class VoskRecogniser implements Recogniser {
  private readonly modelUrl: string;
  private model: Model | null = null;
  private engine: KaldiRecognizer | null = null;
  private wordList: readonly string[] = [];
  private heardSoFar: readonly string[] = [];
  private isOpen = false;
  private settle: ((hypothesis: Hypothesis) => void) | null = null;

  constructor(modelUrl: string) {
    this.modelUrl = modelUrl;
  }

  readonly load: Recogniser["load"] = async () => {
    if (this.model !== null) return ok(null);
    const loaded = await loadModel(this.modelUrl);
    if (!loaded.ok) return loaded;
    this.model = loaded.value;
    return ok(null);
  };

  readonly setGrammar: Recogniser["setGrammar"] = (what) => {
    const rules = reachableRules(what.grammar);
    if (!rules.ok) return Promise.resolve(rules);
    this.wordList = toWordList(what);
    this.renew();
    return Promise.resolve(ok(null));
  };

  readonly accept: Recogniser["accept"] = (samples) => {
    this.isOpen = true;
    this.engine?.acceptWaveformFloat(samples, listeningRate);
  };

  readonly partial: Recogniser["partial"] = () => this.heardSoFar;

  readonly end: Recogniser["end"] = () => {
    if (!this.isOpen || this.engine === null) return Promise.resolve({ words: [] });
    this.isOpen = false;
    this.heardSoFar = [];
    const final = finalResult(this.engine, (done) => (this.settle = done));
    return final.finally(() => (this.settle = null));
  };

  /** Its answer would be the same: it keeps no running mean. */
  readonly reconsider: Recogniser["reconsider"] = () => Promise.resolve({ words: [] });

  readonly forget: Recogniser["forget"] = () => {
    this.renew();
    return Promise.resolve();
  };

  readonly free: Recogniser["free"] = () => {
    this.engine?.remove();
    this.model?.terminate();
    this.engine = null;
    this.model = null;
  };

  private renew(): void {
    this.isOpen = false;
    this.heardSoFar = [];
    this.engine?.remove();
    this.engine = null;
    if (this.model === null) return;
    const engine = new this.model.KaldiRecognizer(listeningRate, JSON.stringify(this.wordList));
    engine.setWords(true);
    engine.on("partialresult", (message) => {
      if (message.event === "partialresult") this.heardSoFar = split(message.result.partial);
    });
    engine.on("result", (message) => {
      if (message.event === "result") this.settle?.(hypothesisOf(message.result)); // finals can come twice
    });
    this.engine = engine;
  }
}

/** The engine leaves `result` out where it heard nothing, whatever its types say. */
function hypothesisOf(final: { readonly result?: readonly VoskWord[] }): Hypothesis {
  return {
    words: (final.result ?? []).map(({ word, start, end, conf }): HeardWord => {
      return { word: asFiller(word), startS: start, lengthS: end - start, probability: conf };
    }),
  };
}

type VoskWord = {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  readonly conf: number;
};

async function loadModel(url: string): Promise<Result<Model, string>> {
  const tail = "Check the archive in the models folder, or take it out to use the embedded recogniser.";
  try {
    const { Model: VoskModel } = await import("vosk-browser");
    const model = new VoskModel(url, -1);
    return await new Promise((resolve) => {
      const give = (result: Result<Model, string>): void => {
        // A model that failed cannot be terminated: its worker throws. It goes when its frame is taken away.
        clearTimeout(limit);
        resolve(result);
      };
      const limit = setTimeout(
        () => give(err(`The Vosk model did not load within ${loadLimitMs / 1000} seconds. ${tail}`)),
        loadLimitMs,
      );
      model.on("load", (message) => {
        const isLoaded = message.event === "load" && message.result;
        give(isLoaded ? ok(model) : err(`The Vosk model could not be read. ${tail}`));
      });
      model.on("error", (message) => {
        give(
          err(
            `The Vosk model could not be loaded${message.event === "error" ? ` (${message.error})` : ""}. ${tail}`,
          ),
        );
      });
    });
  } catch (thrown) {
    return err(
      `The Vosk engine could not start (${thrown instanceof Error ? thrown.message : String(thrown)}). ${tail}`,
    );
  }
}

function finalResult(
  recogniser: KaldiRecognizer,
  onSettle: (done: (hypothesis: Hypothesis) => void) => void,
): Promise<Hypothesis> {
  return new Promise((resolve) => {
    const limit = setTimeout(() => resolve({ words: [] }), finalLimitMs);
    onSettle((hypothesis) => {
      clearTimeout(limit);
      resolve(hypothesis);
    });
    recogniser.retrieveFinalResult();
  });
}

function split(text: string): readonly string[] {
  return text
    .split(" ")
    .filter((word) => word !== "")
    .map(asFiller);
}

/** What the engine calls unknown is chatter: it must not pass for silence. */
function asFiller(word: string): string {
  return word === "[unk]" ? "~unknown" : word;
}
