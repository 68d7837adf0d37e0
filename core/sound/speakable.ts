import { clockWords, fractionWords, writtenNumberWords, ordinalWords } from "./number-words.ts";
import { plainLetters } from "./plain-letters.ts";
import { respell } from "./respellings.ts";
import { dropAbbreviationStops, spellAbbreviations, unitPattern, unitWord } from "./unit-words.ts";

/** A whole number, a decimal, a fraction or a mixed number as written. */
const number = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d[\d,]*(?:\.\d+)?`;
const anyUnit = new RegExp(String.raw`(${number})(-|\s*)(${unitPattern})(?![a-z_'/])`, "gi");

/** Both scales in one text: then the short "degrees" alone would leave the cook guessing. */
function namesBothScales(text: string): boolean {
  return /\d\s*°?\s*F\b/.test(text) && /\d\s*°?\s*C\b/.test(text);
}

function sayHeat(text: string): string {
  const fahrenheit = namesBothScales(text) ? "degrees Fahrenheit" : "degrees";
  return (
    text
      .replace(/(\d)\s*°\s*F(?:ahrenheit)?\b/gi, `$1 ${fahrenheit}`)
      .replace(/(\d)\s*°\s*C(?:elsius)?\b/gi, "$1 degrees Celsius")
      // Without the sign only capitals count: "2 c" might be cups.
      .replace(/(\d)\s*F\b/g, `$1 ${fahrenheit}`)
      .replace(/(\d)\s*C\b/g, "$1 degrees Celsius")
      .replace(/\s*°/g, " degrees")
  );
}

/** "-18" after a space is below zero; a hyphen between words or numbers is not. */
function sayMinus(text: string): string {
  return text.replace(/(^|[\s(])-(?=\d)/g, "$1minus ");
}

function sayRanges(text: string): string {
  return text.replace(/(\d(?:\s*°?\s*[FC]\b)?)\s*[-–—]\s*(?=\d)(?!\d+-)/g, "$1 to ");
}

function sayTimes(text: string): string {
  return text
    .replace(
      /\b(0?\d|1[0-2])(?::([0-5]\d))?\s*([ap])(?:\.m\.|m\b)/gi,
      (_all, hour: string, minute: string | undefined, half: string) =>
        `${clockWords(Number(hour), Number(minute ?? 0)).replace(" o'clock", "")} ${half.toLowerCase()} m`,
    )
    .replace(/\b([01]?\d|2[0-3]):([0-5]\d)(?!\d|:\d)/g, (_all, hour: string, minute: string) =>
      clockWords(Number(hour), Number(minute)),
    );
}

function isOne(written: string): boolean {
  return written === "1" || /^[1-9]\/\d+$/.test(written);
}

/** "a 5-cm piece" is singular, "5 cm" is plural. "½ tsp" is "one half teaspoon". */
function sayUnits(text: string): string {
  return text.replace(
    anyUnit,
    (all, amount: string, gap: string, unit: string, at: number, whole: string) =>
      `${amount} ${unitWord(unit, gap === "-" || isOne(amount))}${/^\d/.test(whole.slice(at + all.length)) ? " " : ""}`,
  );
}

function sayNumbers(text: string): string {
  return text
    .replace(
      /(\d+) (\d+)\/([1-9]\d*)/g,
      (_all, whole: string, top: string, bottom: string) =>
        `${writtenNumberWords(whole)} and ${top === "1" && bottom === "2" ? "a half" : fractionWords(Number(top), Number(bottom))}`,
    )
    .replace(/(\d+)\/([1-9]\d*)/g, (_all, top: string, bottom: string) =>
      fractionWords(Number(top), Number(bottom)),
    )
    .replace(/\b(\d+)(?:st|nd|rd|th)\b/gi, (_all, n: string) => ordinalWords(Number(n)))
    .replace(/\b(\d+)\s?x\b/gi, "$1 times")
    .replace(/\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?/g, (written, at: number, whole: string) => {
      const before = /[a-z]$/i.test(whole.slice(0, at)) ? " " : "";
      const after = /^[a-z]/i.test(whole.slice(at + written.length)) ? " " : "";
      return before + writtenNumberWords(written) + after;
    });
}

function saySigns(text: string): string {
  return text
    .replace(/\s*%/g, " percent")
    .replace(/\s*&\s*/g, " and ")
    .replace(/\s*\+\s*/g, " plus ")
    .replace(/\s*=\s*/g, " equals ")
    .replace(/~\s*/g, "about ")
    .replace(/@/g, " at ")
    .replace(/\$/g, " dollars ")
    .replace(/\s*\/\s*/g, " or ")
    .replace(/\s*(?:…|\.{2,})\s*(?=\S)/g, ", ")
    .replace(/…|\.{2,}/g, ".")
    .replace(/\s*(?:[–—]|\s-{1,2}\s|--)\s*/g, ", ")
    .replace(/\s*[()[\]{}]\s*/g, ", ");
}

/** What is left without a sound goes, and pauses that ran together become one. */
function tidy(text: string): string {
  return text
    .replace(/[^a-z0-9 ,.;:?!'-]/gi, " ")
    .replace(/\s+/g, " ")
    .replace(/\s+(?=[,.;:?!])/g, "")
    .replace(/[,;:](?:\s*[,;:])+/g, ",")
    .replace(/[,;:]\s*(?=[.?!])/g, "")
    .replace(/([.?!])(?:\s*[.,;:])+/g, "$1")
    .replace(/^[\s,.;:?!-]+|[\s,;:-]+$/g, "");
}

/**
 * Text as it stands on the screen, turned into words that the bundled synthesiser reads as a cook would say them:
 * "365 F" becomes "three hundred sixty-five degrees", "10-15 min" "ten to fifteen minutes", "18:34" "six thirty-four".
 * What is in words already passes unchanged.
 * @returns printable ASCII; empty when nothing in the text has a sound
 */
export function speakable(text: string): string {
  const steps = [
    plainLetters,
    dropAbbreviationStops,
    sayMinus,
    sayTimes,
    sayRanges,
    sayHeat,
    sayUnits,
    spellAbbreviations,
    sayNumbers,
    saySigns,
    respell,
    tidy,
  ];
  return steps.reduce((so, step) => step(so), text);
}
