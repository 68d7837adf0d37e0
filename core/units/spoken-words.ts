import { VULGAR } from "./rational.ts";

/** What was read from a sentence, and the index of the first word after it. */
export type SpokenValue<T> = { readonly value: T; readonly next: number };

/**
 * Splits what was said or typed into lower-case words as the spoken-number parsers want them.
 * Hyphens part words ("twenty-five"), but between figures they mean "to" ("10-15"), and "1-1/2" is one and a half.
 * Figures and letters are parted ("90s"), vulgar fractions become "1/2", other punctuation goes.
 */
export function spokenWords(text: string): readonly string[] {
  return text
    .toLowerCase()
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${VULGAR[sign] ?? sign} `)
    .replace(/[’ʼ]/g, "'")
    .replaceAll("\u2044", "/")
    .replace(/(?<=\d)\s*\/\s*(?=\d)/g, "/")
    .replace(/(?<![\d/.])(\d+)[-–—](?=(\d+)\/(\d+))/g, hyphenated)
    .replace(/(?<=\d\s*)[-–—](?=\s*\.?\d)/g, " to ")
    .replace(/(?<=\d),(?=\d{3}(?!\d))/g, "")
    .replace(/(?<=\d)(?=[a-z])|(?<=[a-z])(?=\d)/g, " ")
    .replace(/(?<=\d\s*)%/g, " percent ")
    .replace(/(?<!\d)[/:]|[/:](?!\d)|\.(?!\d)|[^\p{L}\p{M}\d'/:.]/gu, " ")
    .split(/\s+/)
    .filter((word) => word !== "" && word !== "'");
}

/** "1-1/2" is the old way to write one and a half; "1-3/2" can only be a range. */
function hyphenated(match: string, whole: string, numerator: string, denominator: string): string {
  return Number(numerator) < Number(denominator) ? `${whole} ` : match;
}
