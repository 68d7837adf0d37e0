/** An evening's words, in all the ways that they may be written, are 5,000 texts; ten times as many weigh 10 MB. */
const mostRemembered = 50_000;

/**
 * The same function, which answers a text that it knows from memory: every moment of an evening has nearly the same
 * words, and each is asked about again wherever it may be said. Where it has answered too many it begins anew.
 * @param make must give the same for the same text, and nothing that anybody changes
 */
export function remembering<T>(make: (text: string) => T): (text: string) => T {
  const remembered = new Map<string, { readonly answer: T }>();
  return (text) => {
    const known = remembered.get(text);
    if (known !== undefined) return known.answer;
    const answer = make(text);
    if (remembered.size >= mostRemembered) remembered.clear();
    remembered.set(text, { answer });
    return answer;
  };
}
