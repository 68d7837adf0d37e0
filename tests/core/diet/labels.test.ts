import { describe, expect, it } from "vitest";
import { readLabels, withLabels } from "../../../core/food/read-label.ts";
import { butOf, checkWith, dietOf, larder, onlyOf } from "./diet-kit.ts";

const LABEL = "label: oat drink\nserving: 200 ml\nweighs: 206 g\nvalues: {sodium: 80 mg, fat: 2 g}\n";

/** The answer for a cup of a labelled drink. @param more lines of its label */
function answer(diet: ReturnType<typeof butOf>, more: string): string {
  const labels = readLabels([{ place: "labels/oat-drink.yaml", text: LABEL + more }], larder.foods);
  const foods = withLabels(larder.foods, labels);
  return checkWith({ ...larder, foods }, diet, ["1 cup oat drink"]).verdict;
}

describe("a packet of the cook's own", () => {
  const diet = butOf("added salt: avoided");

  it.each([
    ["", "cannot tell"],
    ["made-of: [water, rolled oats]\n", "allowed"],
    ["made-of: [water, rolled oats, salt]\n", "not allowed"],
    ["made-of: [water, rolled oats, moonberries]\n", "cannot tell"],
    ["made-of: [water, rolled oats]\nmay-hold: [sesame]\n", "allowed"],
  ])("[D28] %j: without salt it is %s", (more, verdict) => {
    expect(answer(diet, more)).toBe(verdict);
  });

  it("[D28] its figures are the packet's, and its traces count for an allergy", () => {
    const made = "made-of: [water, rolled oats]\nmay-hold: [sesame]\n";
    expect(answer(dietOf("may-eat: all but what is listed\nallergies: [sesame]\n"), made)).toBe(
      "cannot tell",
    );
    expect(answer(dietOf("may-eat: all but what is listed\nallergies: [peanuts]\n"), made)).toBe("allowed");
    const limit = (most: number) =>
      dietOf(`may-eat: all but what is listed\nlimits: [at most ${most} mg sodium in a serving]\n`);
    expect([answer(limit(30), made), answer(limit(10), made)]).toEqual(["allowed", "not allowed"]);
  });

  it("[D28] it is on a list where all that it is made of is", () => {
    const listed = onlyOf("grains: allowed");
    expect(answer(listed, "made-of: [water, rolled oats]\n")).toBe("allowed");
    expect(answer(listed, "made-of: [water, rolled oats, olive oil]\n")).toBe("not allowed");
  });
});
