/** Words set into lines of at most `width` letters; a longer word is cut. At least one line. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).flatMap((one) => pieces(one, width))) {
    if (line !== "" && lengthOf(line) + 1 + lengthOf(word) > width) {
      lines.push(line);
      line = "";
    }
    line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/** In letters, not in UTF-16 code units. */
const lengthOf = (text: string): number => [...text].length;

function pieces(word: string, width: number): readonly string[] {
  const letters = [...word];
  const count = Math.ceil(letters.length / width);
  return Array.from({ length: count }, (_, index) =>
    letters.slice(index * width, (index + 1) * width).join(""),
  );
}

/** One column: as wide as its longest cell, but at most `most`. */
export interface Column {
  readonly most: number;
  readonly align: "left" | "right";
}

/**
 * Rows set in aligned columns, two spaces between; a cell that is too long goes on in the line below.
 * @param rows a cell for each column
 */
export function columns(rows: readonly (readonly string[])[], shape: readonly Column[]): readonly string[] {
  const widths = shape.map(({ most }, index) =>
    Math.min(most, Math.max(1, ...rows.map((row) => lengthOf(row[index] ?? "")))),
  );
  return rows.flatMap((row) => {
    const cells = shape.map((_, index) => wrapped(row[index] ?? "", widths[index] ?? 1));
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) =>
      cells
        .map((lines, index) => padded(lines[line] ?? "", widths[index] ?? 1, shape[index]?.align ?? "left"))
        .join("  ")
        .trimEnd(),
    );
  });
}

function padded(text: string, width: number, align: Column["align"]): string {
  const room = " ".repeat(Math.max(0, width - lengthOf(text)));
  return align === "left" ? text + room : room + text;
}
