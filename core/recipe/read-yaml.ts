import { LineCounter, isMap, isNode, isPair, isScalar, isSeq, parseDocument, visit } from "yaml";
import type { Document, YAMLError } from "yaml";
import type { FieldPath, Mistake } from "./mistake.ts";
import { tooDeepAt } from "./nesting.ts";

/** A recipe of 200 long steps is about 60,000 characters; anything far beyond is no recipe. */
export const LONGEST_FILE = 250_000;

/** A file as plain data that still knows on which line each value stands. */
export interface WrittenFile {
  readonly file: string;
  readonly value: unknown;
  /** The line (from 1) of the value at `path`, or of the nearest thing round it. */
  readonly lineOf: (path: FieldPath) => number;
}

export interface YamlRead {
  /** null where nothing can be made of the file. */
  readonly written: WrittenFile | null;
  readonly mistakes: readonly Mistake[];
}

const SENTENCES: Partial<Record<YAMLError["code"], string>> = {
  TAB_AS_INDENT: "This line is indented with a tab; use two spaces instead.",
  BAD_INDENT: "This line is indented differently from its neighbours; line it up with them.",
  MISSING_CHAR:
    "A closing sign, a comma or a colon is missing here; check quotes, brackets and the colon behind the key.",
  MULTIPLE_DOCS: "A line of three dashes starts a second recipe; put it in a file of its own.",
  BLOCK_AS_IMPLICIT_KEY: "This line has two colons; put the text after the first one in quotes.",
  BLOCK_IN_FLOW: "A dash or an indented list stands within brackets; use commas there.",
  MULTILINE_IMPLICIT_KEY:
    "A key must stand on one line with its colon; check the line above for a missing colon.",
  BAD_SCALAR_START: "The text begins with a sign that has a meaning of its own; put the text in quotes.",
  BAD_DQ_ESCAPE: "A backslash in double quotes needs a known letter after it; use single quotes instead.",
  NON_STRING_KEY: "A key must be plain text; write a word before the colon.",
  TAG_RESOLVE_FAILED: "An exclamation mark starts a tag, and recipes use none; put the text in quotes.",
};

function sentenceFor(error: YAMLError, text: string): string {
  if (error.code === "DUPLICATE_KEY") {
    const key = /^[^:,\s}]*/.exec(text.slice(error.pos[0], error.pos[0] + 60))?.[0] ?? "";
    return `"${key}" stands here a second time; keep one of the two.`;
  }
  return (
    SENTENCES[error.code] ?? "This line cannot be read; check its colons, quotes, brackets and indentation."
  );
}

/** Our own files say everything where it is used: a pointer elsewhere can also be made to explode. */
const POINTER = "A star points to another place in the file; write the text out here instead.";

function aliases(doc: Document.Parsed): readonly number[] {
  const found: number[] = [];
  visit(doc, { Alias: (_key, node) => void found.push(node.range?.[0] ?? 0) });
  return found;
}

/** JavaScript keeps this one name for itself: it would vanish from every map without a word. */
const RESERVED = "__proto__";

function reserved(doc: Document.Parsed): readonly number[] {
  const found: number[] = [];
  visit(doc, {
    Pair: (_place, { key }) => {
      if (isScalar(key) && key.value === RESERVED) found.push(key.range?.[0] ?? 0);
    },
  });
  return found;
}

/** The offset in the text of the value at `path`: of its key in a map, of itself in a list. */
function offsetOf(doc: Document.Parsed, path: FieldPath): number {
  let node: unknown = doc.contents;
  let offset = doc.contents?.range[0] ?? 0;
  for (const part of path) {
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(part));
      if (!isPair(pair)) return offset;
      if (isNode(pair.key)) offset = pair.key.range?.[0] ?? offset;
      node = pair.value;
    } else if (isSeq(node) && typeof part === "number") {
      node = node.items[part];
      if (isNode(node)) offset = node.range?.[0] ?? offset;
    } else {
      return offset;
    }
  }
  return offset;
}

/** One slip makes the parser complain several times over: the first complaint about a line says it best. */
function firstOfEachLine(mistakes: readonly Mistake[]): readonly Mistake[] {
  const byLine = new Map<number, Mistake>();
  for (const mistake of mistakes) if (!byLine.has(mistake.line)) byLine.set(mistake.line, mistake);
  return [...byLine.values()].toSorted((a, b) => a.line - b.line);
}

function refused(file: string, sentence: string, line = 1): YamlRead {
  return { written: null, mistakes: [{ file, line, field: "", sentence }] };
}

/** Reads one YAML file. Never throws on what people write; every trouble becomes a mistake with its line. */
export function readYaml(file: string, text: string): YamlRead {
  if (text.length > LONGEST_FILE) {
    return refused(file, "This file is far too long for a recipe; split it into dishes of their own.");
  }
  const tooDeep = tooDeepAt(text);
  if (tooDeep !== null) {
    return refused(file, "This line is nested too deeply; write the recipe in plain lines.", tooDeep);
  }
  const lines = new LineCounter();
  const doc = parseDocument(text, { lineCounter: lines, prettyErrors: false, stringKeys: true });
  const lineAt = (offset: number): number => Math.max(1, lines.linePos(offset).line);
  const mistake = (offset: number, sentence: string): Mistake => {
    return { file, line: lineAt(offset), field: "", sentence };
  };
  const errors = [...doc.errors, ...doc.warnings];
  const pointers = aliases(doc);
  const mistakes = [
    ...errors.map((error) => mistake(error.pos[0], sentenceFor(error, text))),
    ...pointers.map((offset) => mistake(offset, POINTER)),
    ...reserved(doc).map((offset) => mistake(offset, `"${RESERVED}" cannot be a name; choose another word.`)),
  ];
  const canGoOn = pointers.length === 0 && errors.every(({ code }) => code === "DUPLICATE_KEY");
  if (!canGoOn) return { written: null, mistakes: firstOfEachLine(mistakes) };
  if (doc.contents === null) return refused(file, "This file is empty; write a recipe or take it away.");
  const written = {
    file,
    value: doc.toJS() as unknown,
    lineOf: (path: FieldPath) => lineAt(offsetOf(doc, path)),
  };
  return { written, mistakes };
}
