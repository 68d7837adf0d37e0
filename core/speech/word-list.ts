import type { ListenFor } from "./recogniser.ts";
import { vocabulary } from "./vocabulary.ts";

/**
 * What is listened for as a Vosk engine takes it: a list of phrases that may follow one another in any order, with
 * "[unk]" for everything else. The engine knows no rules, so single words serve as well as sentences, and a grammar
 * with millions of sentences stays small; what it hears is checked against the rules afterwards, by the phrasebook.
 */
export function toWordList(what: ListenFor): readonly string[] {
  return [...vocabulary(what), "[unk]"];
}
