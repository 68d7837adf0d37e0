import { spokenWords } from "./spoken-words.ts";

/**
 * A set of sentences (a finite language), told by its beginnings: whether it holds the empty sentence, and for each word
 * that a sentence begins with, in order of the letters, what may follow. Two that hold the same are one object, so that
 * a language drawn with its followers is the smallest automaton of its sentences.
 */
export type Language = {
  readonly number: number;
  readonly isEnd: boolean;
  readonly arcs: readonly Arc[];
};

type Arc = { readonly word: Word; readonly to: Language };

/** A word, one object for each spelling. */
type Word = { readonly text: string; readonly number: number };

/**
 * Makes languages out of languages and remembers what it made, whichever grammar it was for: what two moments of an
 * evening have in common is made once. It only grows; whoever owns it looks at its size and begins anew.
 * A subset construction over all places of an evening's grammar, minimised afterwards, costs ten times as much.
 */
export class Languages {
  private readonly words = new Map<string, Word>();
  /** By what they hold, folded into a number; those that share one are compared. */
  private readonly byContent = new Map<number, Language[]>();
  private readonly saidBefore = new Map<string, Language>();
  private readonly unions = new Map<number, Language>();
  private readonly sequences = new Map<number, Language>();
  private made = 0;
  /** No sentence. */
  readonly nothing = this.language(false, []);
  /** The empty sentence alone. */
  readonly silence = this.language(true, []);

  /** How many languages are remembered. */
  get size(): number {
    return this.made;
  }

  /** The one sentence of that text. */
  saying(text: string): Language {
    const known = this.saidBefore.get(text);
    if (known !== undefined) return known;
    const said = spokenWords(text).reduceRight(
      (to, word) => this.language(false, [{ word: this.word(word), to }]),
      this.silence,
    );
    this.saidBefore.set(text, said);
    return said;
  }

  /** The sentences of any of them. Halves of the list are made first, so that one that changes costs few unions. */
  anyOf(languages: readonly Language[]): Language {
    const [first = this.nothing, second] = languages;
    if (second === undefined) return first;
    const middle = languages.length >> 1;
    return this.either(this.anyOf(languages.slice(0, middle)), this.anyOf(languages.slice(middle)));
  }

  /** The sentences of both. */
  either(one: Language, other: Language): Language {
    if (one === other || other === this.nothing) return one;
    if (one === this.nothing) return other;
    const key = one.number < other.number ? keyOf(one, other) : keyOf(other, one);
    const known = this.unions.get(key);
    if (known !== undefined) return known;
    const union = this.language(one.isEnd || other.isEnd, this.merged(one.arcs, other.arcs));
    this.unions.set(key, union);
    return union;
  }

  /** The same, and the empty sentence. */
  orNothingSaid(language: Language): Language {
    return this.language(true, language.arcs);
  }

  /** Every sentence of the first with every one of the second after it. */
  inTurn(first: Language, second: Language): Language {
    if (first === this.silence) return second;
    if (second === this.silence) return first;
    if (second === this.nothing) return second;
    const key = keyOf(first, second);
    const known = this.sequences.get(key);
    if (known !== undefined) return known;
    const arcs = first.arcs.map(({ word, to }) => ({ word, to: this.inTurn(to, second) }));
    const sequence = first.isEnd
      ? this.language(second.isEnd, this.merged(arcs, second.arcs))
      : this.language(false, arcs);
    this.sequences.set(key, sequence);
    return sequence;
  }

  private merged(some: readonly Arc[], others: readonly Arc[]): readonly Arc[] {
    const arcs: Arc[] = [];
    let [at, beside] = [0, 0];
    for (;;) {
      const [one, other] = [some[at], others[beside]];
      if (one === undefined || other === undefined) break;
      const isSame = one.word === other.word;
      const isFirst = isSame || one.word.text < other.word.text;
      if (isSame) arcs.push({ word: one.word, to: this.either(one.to, other.to) });
      else arcs.push(isFirst ? one : other);
      if (isFirst) at++;
      if (isSame || !isFirst) beside++;
    }
    for (; at < some.length; at++) arcs.push(...some.slice(at, at + 1));
    arcs.push(...others.slice(beside));
    return arcs;
  }

  private language(isEnd: boolean, arcs: readonly Arc[]): Language {
    const content = foldedInto(isEnd, arcs);
    const alike = this.byContent.get(content);
    const known = alike?.find((one) => one.isEnd === isEnd && isSameArcs(one.arcs, arcs));
    if (known !== undefined) return known;
    const language = { number: this.made++, isEnd, arcs };
    if (alike === undefined) this.byContent.set(content, [language]);
    else alike.push(language);
    return language;
  }

  private word(text: string): Word {
    const word = this.words.get(text) ?? { text, number: this.words.size };
    this.words.set(text, word);
    return word;
  }
}

/**
 * One number for two languages (Cantor's pairing): while there are few it stays small, and a map finds small ones faster.
 * Exact up to 40 million languages.
 */
function keyOf({ number: one }: Language, { number: other }: Language): number {
  const both = one + other;
  return (both * (both + 1)) / 2 + other;
}

/** A number below 2^30, which a map finds fastest, out of all that a language holds (Knuth's multiplicative hashing). */
function foldedInto(isEnd: boolean, arcs: readonly Arc[]): number {
  let folded = isEnd ? 1 : 2;
  for (const { word, to } of arcs) {
    folded = Math.imul(folded ^ word.number, 0x9e3779b1);
    folded = Math.imul((folded ^ (folded >>> 15)) + to.number, 0x85ebca6b);
  }
  return (folded ^ (folded >>> 13)) & 0x3fffffff;
}

const isSameArcs = (some: readonly Arc[], others: readonly Arc[]): boolean =>
  some.length === others.length &&
  some.every(({ word, to }, at) => word === others[at]?.word && to === others[at].to);
