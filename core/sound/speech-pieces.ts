/**
 * Cuts a text for synthesisers that stop in the middle of a long one: at the end of a sentence where one fits, else
 * after a comma, else between words, and only a single giant word is cut inside.
 * @param maxLength characters in a piece, at least 1
 * @returns pieces of 1 to `maxLength` characters without white space round them; none for an empty text
 */
export function speechPieces(text: string, maxLength: number): readonly string[] {
  const pieces: string[] = [];
  let rest = text.replace(/\s+/g, " ").trim();
  while (rest.length > maxLength) {
    const head = rest.slice(0, maxLength + 1);
    const cut = [/^.*[.!?](?= )/s, /^.*[,;:](?= )/s, /^.*(?= )/s]
      .map((ending) => ending.exec(head)?.[0].length ?? 0)
      .find((at) => at > 0);
    const at = cut ?? maxLength;
    pieces.push(rest.slice(0, at).trim());
    rest = rest.slice(at).trim();
  }
  return rest === "" ? pieces : [...pieces, rest];
}

/** How long a caption needs to be read by someone who looks up from the stove, in milliseconds. */
export function readingMs(text: string): number {
  return 1_200 + 55 * text.length;
}
