/** A recipe nests about six deep; the YAML parser ends the whole process somewhere beyond a thousand. */
const DEEPEST = 40;
const WIDEST_INDENT = 80;

/** Dashes, question marks and colons that each open another level on the same line: "- - - a". */
const OPENERS = /^(?:\s*[-?:](?=\s|$)){8}/;

/**
 * The line (from 1) on which brackets, dashes or indentation go deeper than any recipe does, or null.
 * Looked at before the file is parsed, because the parser recurses.
 */
export function tooDeepAt(text: string): number | null {
  let depth = 0;
  for (const [index, line] of text.split("\n").entries()) {
    // A key in the first column begins afresh: brackets in quoted text do not add up over the whole file.
    if (/^[a-z]/i.test(line)) depth = 0;
    for (const sign of line) {
      if (sign === "[" || sign === "{") depth += 1;
      if (sign === "]" || sign === "}") depth = Math.max(0, depth - 1);
      if (depth > DEEPEST) return index + 1;
    }
    if (OPENERS.test(line) || line.search(/\S/) > WIDEST_INDENT) return index + 1;
  }
  return null;
}
