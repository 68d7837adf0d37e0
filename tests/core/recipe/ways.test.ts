import { describe, expect, it } from "vitest";
import { cookingMealSchema } from "../../../core/recipe/cooking-meal-schema.ts";
import { mealId } from "../../../core/recipe/model.ts";
import type { CookingMeal, Kitchen, Step } from "../../../core/recipe/model.ts";
import { readPantry } from "../../../core/recipe/read-pantry.ts";
import { scaleDish } from "../../../core/recipe/scale.ts";
import { minutes, seconds } from "../../../core/units/quantity.ts";
import { complaints, dishOf, spoilt } from "./bean-pot.ts";
import { PATTIES } from "./patties.ts";

const step = (text: string): Step => {
  const found = dishOf(text).steps.find(({ id }) => id === "cook-the-patties");
  if (found === undefined) throw new Error("the patties are not cooked");
  return found;
};

const kitchen: Kitchen = { burners: 2, ovens: [], appliances: [] };
const meal: CookingMeal = { id: mealId("m"), name: "M", dishes: [dishOf(PATTIES)], kitchen };

describe("a step that can be done in several ways", () => {
  it("[R40] keeps its own way first, and each way has what sets it apart", () => {
    const { ways } = step(PATTIES);
    const heat = { degrees: 400, scale: "F" } as const;
    const time = { low: minutes(20), high: minutes(30) };
    const turn = { kind: "at", after: minutes(10), within: seconds(60), do: "Turn the patties." } as const;
    expect(ways).toEqual({
      taken: "in a pan",
      chosen: { by: "recipe" },
      all: [
        {
          name: "in a pan",
          do: "Fry the patties.",
          hands: "off",
          time,
          extend: null,
          attend: [turn],
          needs: [{ kind: "burner", count: 1 }],
          batch: { of: 6, holds: 2, pieces: "patties" },
        },
        {
          name: "in the oven",
          do: "Bake the patties on one tray.",
          hands: "off",
          time,
          extend: null,
          attend: [],
          needs: [{ kind: "oven", heat: { low: heat, high: heat }, racks: 1 }],
          batch: { of: 6, holds: 6, pieces: "patties" },
        },
      ],
    });
  });

  it.each(["until", "latest", "hold", "with", "after", "ahead", "serve-within"])(
    "[R40] no way has a %s of its own: it holds in all",
    (key) => {
      const text = spoilt(PATTIES, "        hands: off\n", `        ${key}: x\n`);
      expect(complaints(text).map(([line, field]) => [line, field])).toContainEqual([
        26,
        `steps.cook-the-patties.or.in the oven.${key}`,
      ]);
    },
  );

  it.each([
    [
      "a way without a time",
      "        time: 20-30 min\n",
      "",
      24,
      "or.in the oven.time",
      '"time" is missing here; add a line like "time: 10-15 min".',
    ],
    [
      "two ways of one name",
      "      in the oven:",
      "      in the pan:",
      24,
      "or.in the pan",
      '"in the pan" and "in a pan" are one name to the ear; give one of the ways another.',
    ],
    [
      "a name that is not said after the title",
      "      in the oven:",
      "      oven:",
      24,
      "or.oven",
      '"oven" cannot be said after the title; begin with in, on, under, over, with, at or by, like "in the oven".',
    ],
    [
      "other ways of a step whose own has no name",
      "    way: in a pan\n",
      "",
      22,
      "or",
      'The way above has no name; add a line like "way: in a pan" to the step.',
    ],
    [
      "a way that counts other pieces",
      "batch: 6 patties, 6",
      "batch: 4 patties, 4",
      28,
      "or.in the oven.batch",
      "This way has 4 patties and another 6 patties; it is the same work, so count the same.",
    ],
    [
      "moments where the hands are at it",
      "        hands: off\n        time: 20-30 min\n",
      "        time: 20-30 min\n        attend: { after 5 min: Look. }\n",
      27,
      "or.in the oven.attend",
      'Only a step that runs by itself needs attention; write "hands: off", or put it into the sentence.',
    ],
  ])("[R41] %s", (_, from, to, line, field, sentence) => {
    expect(complaints(spoilt(PATTIES, from, to))).toEqual([
      [line, `steps.cook-the-patties.${field}`, sentence],
    ]);
  });

  it("[R41] a way in which nothing is different", () => {
    const [head = "", rest = ""] = PATTIES.split("    hold: 2 h\n");
    const same = head
      .slice(head.indexOf("    do: Fry"))
      .replace(/ {4}until.*\n/, "")
      .replaceAll(/^/gm, "    ");
    const plate = rest.slice(rest.indexOf("  plate"));
    const text = `${head}    or:\n      in the oven:\n${same.trimEnd()}\n${plate}`;
    expect(complaints(text)).toEqual([
      [
        23,
        "steps.cook-the-patties.or.in the oven",
        'Nothing is different "in the oven" from "in a pan"; change its time or its needs, or take it away.',
      ],
    ]);
  });

  it("[R41] one way with a name, and no other", () => {
    const text = PATTIES.replace(/ {4}or:[^]*(?= {2}plate-the)/, "");
    expect(complaints(text)).toEqual([
      [
        13,
        "steps.cook-the-patties.way",
        'There is only one way to do this; write another under "or", or take this line away.',
      ],
    ]);
  });

  it("[R41] more ways than anybody keeps in mind", () => {
    const more = ["at noon", "by hand", "over a fire", "under a lid"].map(
      (name, index) => `      ${name}: { do: Cook., time: ${index + 1} h, hands: off }\n`,
    );
    const text = spoilt(PATTIES, "    or:\n", `    or:\n${more.join("")}`);
    expect(complaints(text)).toEqual([
      [23, "steps.cook-the-patties.or", "A step has at most 5 ways; leave the poorest out."],
    ]);
  });

  it("[R42] scaling counts the pieces of every way, and none is halved", () => {
    const scaled = scaleDish(dishOf(PATTIES), 9).steps.find(({ id }) => id === "cook-the-patties");
    expect([scaled?.batch?.of, ...(scaled?.ways?.all ?? []).map(({ batch }) => batch?.of)]).toEqual([
      9, 9, 9,
    ]);
  });

  it.each([
    ["burners: 2", []],
    [
      "burners: 1\novens: { oven: { racks: 1, heats: 20 F a minute, cools: 6 F a minute, hottest: 480 F } }",
      [],
    ],
    [
      "burners: 0",
      [
        'The step "cook the patties" of Bean Patties needs 1 burners and this kitchen has 0; leave the dish out or cook elsewhere.',
      ],
    ],
  ])("[R43] in a kitchen with %s", (what, sentences) => {
    const { mistakes } = readPantry([
      { shelf: "dishes", name: "patties.yaml", text: PATTIES },
      { shelf: "kitchens", name: "k.yaml", text: `kitchen: K\n${what}\n` },
      { shelf: "meals", name: "m.yaml", text: "meal: M\nabout: M.\nkitchen: k\ndishes: { patties: 6 }\n" },
    ]);
    expect(mistakes.map(({ sentence }) => sentence)).toEqual(sentences);
  });

  it("[R44] a meal with ways is stored and read back as it was", () => {
    expect(cookingMealSchema.parse(JSON.parse(JSON.stringify(meal)))).toEqual(meal);
  });

  it("[R51] a meal that was stored before names no foods and no weights", () => {
    const old = JSON.parse(JSON.stringify(meal), (key, value: unknown) =>
      key === "food" || key === "weighs" ? undefined : value,
    ) as unknown;
    expect(JSON.stringify(old)).not.toContain('"food"');
    expect(cookingMealSchema.parse(old)).toEqual(meal);
  });

  it("[R44] a meal that was stored before has no other ways", () => {
    const old = JSON.parse(JSON.stringify(meal), (key, value: unknown) =>
      key === "ways" ? undefined : value,
    ) as unknown;
    const read = cookingMealSchema.parse(old);
    expect(read.dishes.flatMap(({ steps }) => steps.map(({ ways }) => ways))).toEqual([null, null, null]);
  });
});
