/**
 * Splits a sentence into the words a recogniser deals in: lower case, without punctuation, an apostrophe
 * inside a word kept ("za'atar", "don't"), accents kept ("jalapeño"), a hyphen read as a space.
 * Anything a grammar file could read as an operator is gone, so the words are safe to write into one.
 */
export function spokenWords(text: string): readonly string[] {
  return text
    .normalize("NFC")
    .toLowerCase()
    .replaceAll("’", "'")
    .split(/[^\p{L}\p{N}']+/u)
    .map((word) => word.replace(/^'+|'+$/g, ""))
    .filter((word) => word !== "");
}
