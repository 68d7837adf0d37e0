import { describe, expect, it } from "vitest";
import { workKinds } from "../../../core/pace/pace.ts";
import { verbs } from "../../../core/pace/work-kind-table.ts";
import { workKind } from "../../../core/pace/work-kind.ts";
import { loadPantry } from "../../../server/pantry/load-pantry.ts";
import { step } from "../cook/supper.ts";

describe("kinds of work", () => {
  it.each([
    ["chop the onion", "Chop the onion fine.", "cutting"],
    ["finely slice the leek", "Slice it.", "cutting"],
    ["the pears", "Halve the pears, scoop out the cores.", "cutting"],
    ["knead the dough", "Add the rest of the water and knead the dough.", "mixing"],
    ["wash the greens", "Wash the greens.", "washing"],
    ["roll the breads", "Divide the dough and roll each piece.", "shaping"],
    ["scatter the herbs", "Scatter the herbs.", "plating"],
    ["ponder the moon", "Look up.", "other"],
    ["", "", "other"],
  ])("[P91] %j is told by its leading verb", (title, text, kind) => {
    expect(workKind(step("one", title, { do: text }))).toBe(kind);
  });

  it("[P91] at a burner or in an oven it is work at the stove, whatever its verb", () => {
    expect(workKind(step("a", "stir the roux", { needs: [{ kind: "burner", count: 1 }] }))).toBe("stove");
  });

  it("[P91] what is unattended, in the cold or must not go on is no matter of the cook's pace", () => {
    expect(workKind(step("a", "chop the ice", { needs: [{ kind: "fridge" }] }))).toBeNull();
    expect(workKind(step("a", "stir the caramel", { latest: "hard" }))).toBeNull();
    expect(workKind(step("a", "slice and salt", { hands: "off" }))).toBeNull();
  });

  it("[P91] no verb is of two kinds", () => {
    const all = Object.values(verbs).flatMap((words) => words.split(" "));
    expect(all.filter((verb, index) => all.indexOf(verb) !== index)).toEqual([]);
    expect(Object.keys(verbs).every((kind) => workKinds.some((one) => one === kind))).toBe(true);
  });

  it("[P91] every hands-on step of the recipes that ship has a kind that is known", async () => {
    const { dishes } = await loadPantry(new URL("../../../recipes", import.meta.url).pathname);
    const steps = [...dishes.values()].flatMap((dish) => dish.steps);
    const kinds = steps.map((one) => [one.title, workKind(one)] as const);
    expect(kinds.filter(([, kind]) => kind === "other")).toEqual([]);
    expect(kinds.filter(([, kind]) => kind === null)).toHaveLength(
      steps.filter(({ hands, latest }) => hands === "off" || latest === "hard").length,
    );
  });
});
