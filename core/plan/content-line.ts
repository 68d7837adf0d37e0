/** A line of a calendar file may have this many octets, its line break not counted. Source: RFC 5545, section 3.1. */
const mostOctets = 75;

function octetsOf(letter: string): number {
  const point = letter.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x1_0000 ? 3 : 4;
}

/** Half of a pair of code units has no octets of its own in UTF-8. */
const isHalf = (letter: string): boolean => /^[\uD800-\uDFFF]$/.test(letter);

/**
 * A value of type TEXT. Control characters other than the tab may not stand in a file at all, so they go.
 * Source: RFC 5545, section 3.3.11.
 */
export function textValue(text: string): string {
  return [...text.replace(/\r\n?/g, "\n")]
    .map((letter) => (isHalf(letter) ? "\uFFFD" : letter))
    .join("")
    .replace(/[\\;,]/g, "\\$&")
    .replace(/\n/g, "\\n")
    .replace(/(?!\t)[\p{Cc}]/gu, "");
}

/**
 * One content line with its line break, folded where it is too long: never within a letter, so that each piece can be
 * read as UTF-8 by itself. The space that begins a further piece counts among its octets.
 * Source: RFC 5545, section 3.1.
 * @param value as it stands in the file; a TEXT has been through `textValue`
 */
export function contentLine(name: string, value: string): string {
  let line = "";
  let octets = 0;
  for (const letter of `${name}:${value}`) {
    const more = octetsOf(letter);
    if (octets + more > mostOctets) {
      line += "\r\n ";
      octets = 1;
    }
    line += letter;
    octets += more;
  }
  return `${line}\r\n`;
}
