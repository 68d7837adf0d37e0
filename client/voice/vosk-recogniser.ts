import type { Model } from "vosk-browser";
import { ok, type Result } from "../../core/units/result.ts";
import type { Acceptance } from "../../core/speech/acceptance.ts";
import type { WordEngine } from "../../core/speech/word-engine.ts";
import { reachableRules } from "../../core/speech/check-grammar.ts";
import { toWordList } from "../../core/speech/word-list.ts";
import type { ModelLoading } from "./engine.ts";
import { loadVoskModel } from "./vosk-model.ts";
import { VoskStream } from "./vosk-stream.ts";

/** Its words carry a true confidence each; the limits are cautious guesses, not measured for want of a model. */
export const voskAcceptance: Acceptance = { address: 0.5, addressed: 0.3, open: 0.6, stopOnly: 0.6 };

/**
 * The Vosk engine behind our interface, for a model that the cook has put on the server.
 * @param modelUrl a tar.gz; versioned by its hash, because the browser keeps a model under its address
 */
export function createVoskRecogniser(
  modelUrl: string,
  onLoading: (loading: ModelLoading) => void,
): WordEngine {
  return new VoskRecogniser(modelUrl, onLoading);
}

class VoskRecogniser implements WordEngine {
  private readonly modelUrl: string;
  private readonly onLoading: (loading: ModelLoading) => void;
  private model: Model | null = null;
  private stream: VoskStream | null = null;
  private wordList: readonly string[] = [];

  constructor(modelUrl: string, onLoading: (loading: ModelLoading) => void) {
    this.modelUrl = modelUrl;
    this.onLoading = onLoading;
  }

  readonly load: WordEngine["load"] = async () => {
    if (this.model !== null) return ok(null);
    const loaded = await loadVoskModel(this.modelUrl, this.onLoading);
    if (!loaded.ok) return loaded;
    this.model = loaded.value;
    return ok(null);
  };

  readonly setGrammar: WordEngine["setGrammar"] = async (what) => {
    const rules = reachableRules(what.grammar);
    if (!rules.ok) return rules;
    const wordList = toWordList(what);
    // Most changes of the moment change the sentences and not the words, and the engine knows only these.
    const isSame = this.stream !== null && wordList.join(" ") === this.wordList.join(" ");
    if (isSame && !this.stream?.isOpen) return ok(null);
    this.wordList = wordList;
    return this.renew();
  };

  readonly accept: WordEngine["accept"] = (samples) => this.stream?.accept(samples);

  readonly partial: WordEngine["partial"] = () => this.stream?.partial() ?? [];

  readonly end: WordEngine["end"] = () => this.stream?.final() ?? Promise.resolve({ words: [] });

  /** Its answer would be the same: it keeps no running mean. */
  readonly reconsider: WordEngine["reconsider"] = () => Promise.resolve({ words: [] });

  readonly forget: WordEngine["forget"] = async () => {
    const renewed = this.stream === null ? ok(null) : await this.renew();
    if (!renewed.ok) throw new Error(renewed.error);
  };

  readonly free: WordEngine["free"] = () => {
    this.stream?.remove();
    this.model?.terminate();
    this.stream = null;
    this.model = null;
  };

  /** A new one in the place of the old: the engine cannot change one, and keeps what nobody removes. */
  private async renew(): Promise<Result<null, string>> {
    this.stream?.remove();
    this.stream = null;
    if (this.model === null) return ok(null);
    const made = await VoskStream.make(this.model, this.wordList);
    if (!made.ok) return made;
    this.stream = made.value;
    return ok(null);
  }
}
