import type { KaldiRecognizer, Model } from "vosk-browser";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { Acceptance } from "../../core/speech/acceptance.ts";
import type { HeardWord, Hypothesis, Recogniser } from "../../core/speech/recogniser.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { toWordList } from "../../core/speech/word-list.ts";

/** Its words carry a true confidence each; the limits are cautious guesses, not measured for want of a model. */
export const voskAcceptance: Acceptance = { addressed: 0.3, open: 0.6, stopOnly: 0.6 };

/** Unpacking a model of 40 MB takes seconds; beyond this something is wrong, and the engine never says so itself. */
const loadLimitMs = 90_000;
/** A final result comes within a moment of its request, or not at all. */
const finalLimitMs = 3_000;

/**
 * The Vosk engine behind our interface, for a model that the cook has put on the server.
 * @param modelUrl a tar.gz; versioned by its hash, because a bad one is kept by the browser under its address
 */
export function createVoskRecogniser(modelUrl: string): Recogniser {
  let model: Model | null = null;
  let recogniser: KaldiRecognizer | null = null;
  let wordList: readonly string[] = [];
  let partial: readonly string[] = [];
  let isOpen = false;
  let settle: ((hypothesis: Hypothesis) => void) | null = null;

  const renew = (): void => {
    recogniser?.remove();
    recogniser = null;
    if (model === null) return;
    const made = new model.KaldiRecognizer(listeningRate, JSON.stringify(wordList));
    made.setWords(true);
    made.on("partialresult", (message) => {
      if (message.event === "partialresult") partial = split(message.result.partial);
    });
    made.on("result", (message) => {
      if (message.event !== "result" || settle === null) return; // finals can come twice
      const words = (message.result.result ?? []).map(({ word, start, end, conf }): HeardWord => ({
        word: asFiller(word),
        startS: start,
        lengthS: end - start,
        probability: conf,
      }));
      settle({ words });
    });
    recogniser = made;
  };
  return {
    load: async () => {
      const loaded = await loadModel(modelUrl);
      if (!loaded.ok) return loaded;
      model = loaded.value;
      return ok(null);
    },
    setGrammar: ({ grammar, address }) => {
      wordList = toWordList(grammar, address);
      isOpen = false;
      renew();
      return Promise.resolve(ok(null));
    },
    accept: (samples) => {
      isOpen = true;
      recogniser?.acceptWaveformFloat(samples, listeningRate);
    },
    partial: () => partial,
    end: () => {
      if (!isOpen || recogniser === null) return Promise.resolve({ words: [] });
      isOpen = false;
      partial = [];
      return finalResult(recogniser, (done) => (settle = done)).finally(() => (settle = null));
    },
    // Its answer would be the same: it keeps no running mean.
    reconsider: () => Promise.resolve({ words: [] }),
    forget: () => {
      isOpen = false;
      renew();
      return Promise.resolve();
    },
    free: () => {
      recogniser?.remove();
      model?.terminate();
      recogniser = null;
      model = null;
    },
  };
}

async function loadModel(url: string): Promise<Result<Model, string>> {
  const tail = "Check the archive in the models folder, or take it out to use the embedded recogniser.";
  try {
    const { Model: VoskModel } = await import("vosk-browser");
    const model = new VoskModel(url, -1);
    return await new Promise((resolve) => {
      const give = (result: Result<Model, string>): void => {
        clearTimeout(limit);
        if (!result.ok) model.terminate();
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
