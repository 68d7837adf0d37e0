/**
 * A text in UTF-8 (RFC 3629), for core knows no platform that would do it. Throws on half a surrogate pair, which
 * JSON never holds.
 */
export function utf8(text: string): Uint8Array {
  const coded = encodeURIComponent(text);
  const bytes: number[] = [];
  for (let at = 0; at < coded.length; at++) {
    const isEscape = coded[at] === "%";
    bytes.push(isEscape ? Number.parseInt(coded.slice(at + 1, at + 3), 16) : coded.charCodeAt(at));
    if (isEscape) at += 2;
  }
  return Uint8Array.from(bytes);
}
