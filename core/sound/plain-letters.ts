/** Text in the letters of ASCII, the only ones the synthesiser has sounds for. */

/** Letters that Unicode does not take apart into a plain letter and an accent. */
const letters: Readonly<Record<string, string>> = {
  æ: "ae",
  Æ: "Ae",
  œ: "oe",
  Œ: "Oe",
  ø: "o",
  Ø: "O",
  ß: "ss",
  ł: "l",
  Ł: "L",
  đ: "d",
  Đ: "D",
  ð: "d",
  þ: "th",
  ı: "i",
};

/** Vulgar fractions as "n/d" and other signs by the words a cook would say. */
const signs: Readonly<Record<string, string>> = {
  "⁄": "/",
  "∕": "/",
  "×": " times ",
  "÷": " divided by ",
  "±": " plus or minus ",
  "≈": " about ",
  "≤": " at most ",
  "≥": " at least ",
  "−": "-",
  "‘": "'",
  "’": "'",
  ʼ: "'",
  "“": " ",
  "”": " ",
  "„": " ",
  "«": " ",
  "»": " ",
  "–": "–",
  "—": "—",
  "…": "…",
  "°": "°",
  "·": ", ",
  "•": ", ",
  "→": ", ",
  "€": " euros ",
  µ: "micro",
};

/**
 * Accents go, ligatures and vulgar fractions come apart, typographic marks become plain ones. The three marks that
 * `speakable` gives a meaning (degree sign, dashes, ellipsis) stay; what else has no plain form becomes a space.
 */
export function plainLetters(text: string): string {
  const apart = text
    // A fraction stuck to a whole number ("1½") must not read as "11/2".
    .replace(/(\d)(?=[¼-¾⅐-⅞])/gu, "$1 ")
    .replace(/[¼-¾⅐-⅞]/gu, (fraction) => fraction.normalize("NFKC"))
    .replace(/℃/gu, "°C")
    .replace(/℉/gu, "°F")
    .replace(/º|˚/gu, "°")
    .normalize("NFD")
    .replace(/\p{M}|\u00ad|\p{Cf}/gu, "");
  return [...apart].map((char) => letters[char] ?? signs[char] ?? (char <= "~" ? char : " ")).join("");
}
