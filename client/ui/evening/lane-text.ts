/** Fewer letters of a word tell nothing. */
const leastLetters = 3;

/**
 * A step's title set into the lines of a bar: whole words where they fit, the last one cut where it must be.
 * @param room letters a line takes
 * @returns no line where not even a beginning of it can be read
 */
export function fitTitle(title: string, room: number, most: number): readonly string[] {
  if (title.length <= room) return [title];
  if (room < leastLetters + 2) return [];
  const lines: string[] = [];
  let rest = title;
  while (rest !== "") {
    const end = rest.length <= room ? rest.length : rest.lastIndexOf(" ", room);
    // The last line, or a word that is longer than a line: no more than its beginning can be shown.
    if (end <= 0 || lines.length === most - 1) return [...lines, cut(rest, room)];
    lines.push(rest.slice(0, end));
    rest = rest.slice(end).trimStart();
  }
  return lines;
}

const cut = (text: string, room: number): string =>
  text.length <= room ? text : `${text.slice(0, room - 1).trimEnd()}…`;
