import { describe, expect, it } from "vitest";
import { guidance } from "../../../core/keeping/guidance-table.ts";
import { keepingOf, unknownKeeping } from "../../../core/keeping/keeping.ts";
import { sources } from "../../../core/keeping/sources-table.ts";
import { hours, minutes, seconds } from "../../../core/units/quantity.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { food } from "./pots.ts";

const { table } = await shippedFoods();
const keeping = (...lines: readonly string[]) => keepingOf(lines.map(food), "", table);

describe("published guidance", () => {
  it("[G1] cooling goes in two stages, four hours where nothing was hot", () => {
    // Source: FDA Food Code 2022, 3-501.14 (A) and (B): 135 F to 70 F within 2 h, to 41 F within 6 h in all; 4 h to
    // 41 F for food made from ingredients at ambient temperature.
    expect(guidance.hotFrom.value).toBe(135);
    expect(guidance.coolFirst.value).toEqual({ heat: 70, within: hours(2) });
    expect(guidance.coolInAll.value).toEqual({ heat: 41, within: hours(6) });
    expect(guidance.coolFromAmbient.value).toEqual({ heat: 41, within: hours(4) });
    expect(sources[guidance.coolFirst.source].name).toMatch(/3-501\.14/);
  });

  it("[G1] reheating for holding: 165 F for 15 seconds, within two hours", () => {
    // Source: FDA Food Code 2022, 3-403.11.
    expect(guidance.reheatTo.value).toBe(165);
    expect(guidance.reheatHeldFor.value).toBe(seconds(15));
    expect(guidance.reheatWithin.value).toBe(hours(2));
  });

  it("[G1] two hours out, one above 90 F; dry kidney beans soak five hours and boil thirty minutes", () => {
    // Sources: USDA FSIS, Leftovers and Food Safety; FDA Bad Bug Book, phytohaemagglutinin.
    expect([guidance.outAtMost.value, guidance.outWhenHot.value]).toEqual([hours(2), hours(1)]);
    expect(guidance.hotKitchen.value).toBe(90);
    expect([guidance.soakBeans.value, guidance.boilBeans.value]).toEqual([hours(5), minutes(30)]);
    // Source: National Center for Home Food Preservation, Freezing Garlic-in-Oil.
    expect(guidance.garlicOilFridgeDays.value).toBe(7);
  });

  it("[G1] every figure names a source that is listed, read or from memory", () => {
    for (const { source } of Object.values(guidance)) {
      expect(sources[source].name).not.toBe("");
      expect(["read", "memory"]).toContain(sources[source].known);
    }
  });

  it("[G2] the stricter figure counts: 140 F to hold hot, 40 F to hold cold, three days in the fridge", () => {
    // Sources: USDA FSIS, Danger Zone (40 F to 140 F), against FDA Food Code 2022, 3-501.16 (135 F, 41 F); USDA FSIS,
    // Leftovers and Food Safety: 3 to 4 days.
    expect(guidance.holdHot).toMatchObject({ value: 140, lessStrict: { value: 135 } });
    expect(guidance.holdCold).toMatchObject({ value: 40, lessStrict: { value: 41 } });
    expect(guidance.fridgeDays).toMatchObject({ value: 3, lessStrict: { value: 4 } });
  });
});

describe("how a dish keeps", () => {
  it("[G3] a dish of known foods keeps three days; its ingredients may be named loosely", () => {
    expect(keeping("red lentils, rinsed", "crushed tomatoes", "water for the onion")).toEqual({
      fridgeDays: 3,
      freezerDays: 90,
      source: "leftovers",
      hazards: [],
      known: "all",
    });
  });

  it("[G3] what is no known food makes the dish keep by the strictest figure", () => {
    expect(keeping("red lentils", "moonseed")).toMatchObject({ fridgeDays: 1, known: { but: ["moonseed"] } });
    expect(keepingOf([food("red lentils")], "", null)).toEqual(unknownKeeping);
    expect(keepingOf([], "", table)).toEqual(unknownKeeping);
    expect(unknownKeeping).toMatchObject({ fridgeDays: 1, known: "none" });
    const shortest = Object.values(guidance).flatMap(({ value }) =>
      typeof value === "number" ? [value] : [],
    );
    expect(Math.min(...shortest)).toBe(unknownKeeping.fridgeDays);
  });

  it("[G4] rice keeps one day; rice vinegar is no rice", () => {
    // Source: UK Food Standards Agency and NHS: no more than one day in the fridge.
    for (const rice of ["short-grain brown rice", "rice, cooked", "cooked long-grain white rice"])
      expect(keeping(rice)).toMatchObject({ fridgeDays: 1, source: "rice", hazards: ["rice"] });
    expect(keeping("dry rice noodles").hazards).toEqual([]);
  });
});
