import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { speakable } from "../../../core/sound/speakable.ts";

describe("text in words", () => {
  it.each([
    ["Heat the oven to 365 F.", "Heat the oven to three hundred sixty-five degrees."],
    ["450°F or 450 °F", "four hundred fifty degrees or four hundred fifty degrees"],
    ["180 °C", "one hundred eighty degrees Celsius"],
    ["350 F (175 C)", "three hundred fifty degrees Fahrenheit, one hundred seventy-five degrees Celsius"],
    ["Freeze at -18 °C.", "Freeze at minus eighteen degrees Celsius."],
    ["350-385 F", "three hundred fifty to three hundred eighty-five degrees"],
    ["Vitamin C stays.", "Vitamin C stays."],
  ])("[S1] heat is said with its scale only where needed: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  it.each([
    ["10-15 min", "ten to fifteen minutes"],
    ["for 10–15 min.", "for ten to fifteen minutes."],
    ["Simmer 15 min. Then rest.", "Simmer fifteen minutes. Then rest."],
    ["about 15 min. more", "about fifteen minutes more"],
    ["3h20min", "three hours twenty minutes"],
    ["1 min", "one minute"],
    ["~20 min", "about twenty minutes"],
  ])("[S2] lengths of time are said in full: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  it.each([
    ["At 18:34 we eat.", "At six thirty-four we eat."],
    ["7:05", "seven oh five"],
    ["18:00", "six o'clock"],
    ["0:15", "twelve fifteen"],
    ["12:00", "twelve o'clock"],
    ["6:30 pm", "six thirty p m"],
    ["8 a.m.", "eight a m"],
    ["25:00 and 7:61", "twenty-five:zero and seven:sixty-one"],
  ])("[S3] a time of day is said as a cook says it: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  it.each([
    ["1 1/2 tbsp", "one and a half tablespoons"],
    ["½ tsp", "one half teaspoon"],
    ["3¾ lb", "three and three quarters pounds"],
    ["2/3 cup", "two thirds cup"],
    ["3/8", "three eighths"],
    ["2.5 kg", "two point five kilograms"],
    ["1,250 g", "one thousand two hundred fifty grams"],
    ["1,000,000", "one million"],
    ["12 oz / 340 g", "twelve ounces or three hundred forty grams"],
    ["1.5 L, 20 mL", "one point five liters, twenty milliliters"],
    ["a 5-cm piece", "a five centimeter piece"],
    ["2x, 21st, 100th", "two times, twenty-first, one hundredth"],
    ["105", "one hundred five"],
    ["12345678901", "one two three four five six seven eight nine zero one"],
  ])("[S4] amounts and units are words: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  it.each([
    ["Sauté the onions", "so tay the onions"],
    ["Crème fraîche", "krem fresh"],
    ["jalapeño, purée, quinoa", "hah la pain yo, pew ray, keen wah"],
    ["Entrée für Øre", "Entree fur Ore"],
    ["sautéed gnocchi's", "so tayed nyokee's"],
  ])("[S5] accents go, and what the synthesiser misreads is respelt: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  it.each([
    ["Wait… now", "Wait, now"],
    ["Hmm... what?", "Hmm, what?"],
    ["Wait…", "Wait."],
    ["wait -- stop — now", "wait, stop, now"],
    ["Don’t cut “the” bread", "Don't cut the bread"],
    ["It's 90% done & ready w/ lid.", "It's ninety percent done and ready with lid."],
    ["(two cloves, rinsed)", "two cloves, rinsed"],
    ["*bold* <b> 🍅 tomato", "bold b tomato"],
    ["No. 3 burner", "number three burner"],
    ["-l", "l"],
    [" \n ", ""],
    ["…!?", ""],
  ])("[S6] marks become pauses or words, or go: %s", (text, words) => {
    expect(speakable(text)).toBe(words);
  });

  const scraps = [
    "1",
    "12:30",
    "½",
    " ",
    "-",
    "…",
    "°F",
    " C",
    "min.",
    "é",
    "🍅",
    "w/",
    "pm",
    ".",
    ",",
    "x",
    "(",
    "tsp",
    "\n",
    "3/4",
  ];

  it("[S7] whatever is put in, only printable ASCII without digits comes out", () => {
    const text = fc.oneof(
      fc.string({ unit: "binary", maxLength: 60 }),
      fc.array(fc.constantFrom(...scraps), { maxLength: 12 }).map((parts) => parts.join("")),
    );
    fc.assert(
      fc.property(text, (written) => {
        const words = speakable(written);
        expect(words).toMatch(/^[a-zA-Z ,.;:?!'-]*$/);
        expect(words).toBe(words.trim());
      }),
      { numRuns: 500 },
    );
  });

  it("[S7] what is in words already passes unchanged", () => {
    const phrase = fc.constantFrom(
      "10-15 min",
      "at 18:34",
      "½ tsp",
      "sauté",
      "365 F",
      "180 °C",
      "stir,",
      "wait…",
      "3¾ lb",
      "Then",
      "the 2nd pan.",
      "8 pm",
      "1 1/2 cups",
      "purée",
      "— now",
    );
    fc.assert(
      fc.property(fc.array(phrase, { maxLength: 8 }), (phrases) => {
        const words = speakable(phrases.join(" "));
        expect(speakable(words)).toBe(words);
      }),
      { numRuns: 300 },
    );
  });
});
