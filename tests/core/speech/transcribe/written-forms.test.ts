import { describe, expect, it } from "vitest";
import { essence } from "../../../../core/speech/transcribe/same-words.ts";
import { inDigits, isNumberWord, writtenForms } from "../../../../core/speech/transcribe/written-forms.ts";

describe("how a word may be written", () => {
  it.each([
    ["jalapeño", ["jalapeño", "jalapeno"]],
    ["purée", ["purée", "puree"]],
    ["okay", ["okay", "ok", "o k"]],
    ["za'atar", ["za'atar"]],
    ["rice", ["rice"]],
    ["pears", ["pears", "pairs"]],
    ["two", ["two", "to", "too"]],
    ["to", ["to"]],
    ["undo", ["undo", "and do", "un do"]],
    ["flatbreads", ["flatbreads", "flat breads"]],
    ["blackberries", ["blackberries", "black berries"]],
    ["nuts", ["nuts"]],
  ])("[V50] %j is written %j", (word, forms) => {
    expect(writtenForms(word)).toEqual(forms);
  });

  it.each([
    ["five", "5"],
    ["fifteen", "15"],
    ["twenty five", "25"],
    ["one five", "15"],
    ["three hundred and fifty", "350"],
    ["two thousand five hundred", "2500"],
  ])("[V50] the number %j may be written %j", (words, digits) => {
    expect(inDigits(words.split(" "))).toBe(digits);
  });

  it.each([
    "twenty and",
    "two thirds",
    "half",
    "one point five",
    "five minutes",
    "a dozen",
    "minutes",
    "and five",
  ])("[V50] %j is no whole number and has no digits", (words) => {
    expect(inDigits(words.split(" "))).toBeNull();
  });

  it("[V50] every word that a number may be made of is known as one", () => {
    const words = "three hundred and fifty two thousand nineteen".split(" ");
    expect(words.filter((word) => !isNumberWord(word))).toEqual([]);
    expect(["minutes", "for", "rice", "please"].filter(isNumberWord)).toEqual([]);
  });
});

describe("whether words say the same", () => {
  it.each([
    ["set a timer for fifteen minutes", "set a timer for one five minutes please"],
    ["three hundred and fifty grams", "three hundred fifty grams"],
    ["please what now", "what now"],
  ])("[V54] %j and %j do", (one, other) => {
    expect(essence(one.split(" "))).toBe(essence(other.split(" ")));
  });

  it.each([
    ["set a timer for fifteen minutes", "set a timer for fifty minutes"],
    ["stop the timer", "stop timer"],
    ["twenty five minutes", "twenty minutes five"],
  ])("[V54] %j and %j do not", (one, other) => {
    expect(essence(one.split(" "))).not.toBe(essence(other.split(" ")));
  });
});
