import type { Unit } from "../units/unit.ts";
import { unitWords } from "../units/unit.ts";
import { nutrientWords } from "./nutrient-names.ts";
import type { Pattern } from "./pattern.ts";
import { readPattern } from "./pattern.ts";

/** Units that a cook asks about aloud; the parser knows every other one too. */
const SPOKEN_UNITS: readonly Unit[] = [
  "tsp",
  "tbsp",
  "cup",
  "fl-oz",
  "oz",
  "lb",
  "g",
  "kg",
  "ml",
  "l",
  "pint",
  "quart",
];

const ones = SPOKEN_UNITS.map((unit) => unitWords(unit).one).join(" | ");
const many = SPOKEN_UNITS.map((unit) => unitWords(unit).many).join(" | ");

const DIGITS = "one | two | three | four | five | six | seven | eight | nine";
const TEENS =
  "ten | eleven | twelve | thirteen | fourteen | fifteen | sixteen | seventeen | eighteen | nineteen";
const SOME = "two | three | four | five | six | seven | eight | nine";

/** The ranges that recipes name; any two figures would let "six to fifteen" be heard as "sixty fifteen". */
const RANGES: readonly (readonly [string, string])[] = [
  ["one", "two"],
  ["two", "three"],
  ["three", "four"],
  ["four", "five"],
  ["five", "six"],
  ["five", "seven"],
  ["five", "ten"],
  ["eight", "ten"],
  ["ten", "twelve"],
  ["ten", "fifteen"],
  ["twelve", "fifteen"],
  ["fifteen", "twenty"],
  ["twenty", "twenty five"],
  ["twenty", "thirty"],
  ["twenty five", "thirty"],
  ["thirty", "thirty five"],
  ["thirty", "forty"],
  ["thirty five", "forty"],
  ["forty", "forty five"],
  ["forty", "fifty"],
  ["forty five", "fifty"],
  ["fifty", "sixty"],
];

/**
 * The spoken forms of numbers, times, heats and amounts that are listened for. They agree ("one minute",
 * "two minutes"), which spares the recogniser half of its mistakes. The readers in `value-slots.ts` take all of
 * these and more; a property test walks the rules and holds them to it.
 */
const RULES: Readonly<Record<string, string>> = {
  digit: DIGITS,
  tens: "twenty | thirty | forty | fifty | sixty | seventy | eighty | ninety",
  few: SOME,
  many: `${SOME} | ${TEENS} | <tens> [<digit>]`,
  "two-figures": `${TEENS} | <tens> [<digit>]`,
  "figure-by-figure": `(one | two | three | four | five | six) (zero | ${DIGITS})`,
  range: RANGES.map(([low, high]) => `${low} to ${high}`).join(" | "),
  number: "one | <many> | <figure-by-figure>",
  span: [
    "(a | one) minute",
    "a minute and a half",
    "<many> minutes",
    "<few> and a half minutes",
    "<figure-by-figure> minutes",
    "<range> minutes",
    "<many> seconds",
    "<few> minutes and <many> seconds",
    "half an hour",
    "a quarter of an hour",
    "three quarters of an hour",
    "(an | one) hour",
    "an hour and a half",
    "<few> hours",
    "<few> and a half hours",
    "(an | one) hour and <many> minutes",
    "<few> hours and <many> minutes",
  ].join(" | "),
  length: "one minute | <many> minute | one hour | half hour | <few> hour | <many> second",
  extra: [
    "one more minute",
    "another minute",
    "<many> more minutes",
    "another <many> minutes",
    "<many> minutes more",
    "<many> more seconds",
    "another <many> seconds",
    "another half an hour",
    "another hour",
  ].join(" | "),
  hour: `${DIGITS} | ten | eleven | twelve`,
  clock: [
    "<hour> [o'clock]",
    `<hour> (${TEENS} | (twenty | thirty | forty | fifty) [<digit>])`,
    "<hour> oh <digit>",
    "half past <hour>",
    "a quarter (past | to) <hour>",
    "quarter (past | to) <hour>",
    "(five | ten | twenty) (past | to) <hour>",
    "noon",
  ].join(" | "),
  heat: [
    "(one | two | three | four | five) hundred [[and] <two-figures>] [degrees] [<scale>]",
    "(one | two | three | four) <two-figures> [degrees] [<scale>]",
  ].join(" | "),
  scale: "fahrenheit | celsius",
  unit: many,
  nutrient: nutrientWords.join(" | "),
  measure: [
    `(a | one) (${ones})`,
    `<many> (${many})`,
    `half a (${ones})`,
    `(a | one) quarter (${ones})`,
    `three quarters of a (${ones})`,
    `(a | one) third of a (${ones})`,
    `two thirds of a (${ones})`,
    `one and a half (${many})`,
    `<few> and a half (${many})`,
  ].join(" | "),
  quantity: [
    "<measure> of",
    "(a | one | <few>) hundred [[and] fifty] grams of",
    "(a | one) (clove | head | can | pinch | bunch | sprig | stalk | slice | handful) of",
    "<few> (cloves | heads | cans | pinches | bunches | sprigs | stalks | slices | handfuls) of",
    "half a (head | bunch | can) of",
    "one | <few> | one and a half | <few> and a half | half (a | an)",
  ].join(" | "),
};

/** The same rules, read; `scale`, `number`, `span`, ... are slots too and keep their slot's name. */
export const valueRules: ReadonlyMap<string, Pattern> = new Map(
  Object.entries(RULES).map(([name, text]) => [name, readPattern(text)]),
);
