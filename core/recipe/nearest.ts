/** How many single letters must be put in, taken out, changed or swapped with their neighbour. */
function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, column) => column)];
  const cell = (row: number, column: number): number => rows[row]?.[column] ?? Infinity;
  for (let i = 1; i <= a.length; i += 1) {
    rows.push([i]);
    for (let j = 1; j <= b.length; j += 1) {
      const change = cell(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwapped ? cell(i - 2, j - 2) + 1 : Infinity;
      rows[i]?.push(Math.min(change, swap, cell(i - 1, j) + 1, cell(i, j - 1) + 1));
    }
  }
  return cell(a.length, b.length);
}

/** The known word that `written` was most likely meant to be, or null where none is near. */
export function nearest(written: string, known: readonly string[]): string | null {
  if (written.length > 60) return null;
  const lower = written.toLowerCase();
  const ranked = known
    .map((word) => {
      const isPart = lower.length > 2 && (word.startsWith(lower) || lower.startsWith(word));
      return { word, far: isPart ? 1 : distance(lower, word.toLowerCase()) };
    })
    .toSorted((a, b) => a.far - b.far);
  const best = ranked[0];
  if (best === undefined) return null;
  return best.far <= Math.max(1, Math.floor(Math.max(lower.length, best.word.length) / 3)) ? best.word : null;
}

/** "a, b and c"; "a or b" with another joining word. */
export function listed(words: readonly string[], join: "and" | "or" = "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${join} ${words.at(-1) ?? ""}`;
}
