import type { Tokens } from "./transcriber.ts";

/**
 * Tokens by the characters that they add, as a tree. Case is dropped, and whatever parts words (a space, a comma, a
 * hyphen) is one space. Tokens that no kitchen sentence is written with (other scripts, brackets) are left out.
 */
export type TokenTree = {
  readonly next: ReadonlyMap<string, TokenTree>;
  /** The tokens that end here. */
  readonly tokens: readonly number[];
};

type Growing = { readonly next: Map<string, Growing>; readonly tokens: number[] };

/** Makes the tree; once for each model. */
export function tokenTree({ texts, first, last }: Tokens): TokenTree {
  const root: Growing = { next: new Map(), tokens: [] };
  texts.forEach((text, token) => {
    const characters = token === first || token === last ? null : charactersOf(text);
    if (characters === null) return;
    let node = root;
    for (const character of characters) {
      const known = node.next.get(character);
      const child = known ?? { next: new Map(), tokens: [] };
      if (known === undefined) node.next.set(character, child);
      node = child;
    }
    node.tokens.push(token);
  });
  return root;
}

/** The text of a token as words and gaps; null for one that has no place in a sentence. */
function charactersOf(text: string): string | null {
  const gapsMarked = text.replaceAll(/[▁,.?!;:-]+/g, " ").toLowerCase();
  return /^[\p{L}\p{N}' ]+$/u.test(gapsMarked) ? gapsMarked : null;
}
