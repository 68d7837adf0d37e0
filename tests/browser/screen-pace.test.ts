import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { knownPaces, pacesFor } from "../../core/pace/known-paces.ts";
import type { KnownPace, WorkKind } from "../../core/pace/pace.ts";
import { instant } from "../../core/units/quantity.ts";
import { cookUntil, ownPantry } from "./screen/evening.ts";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let known: Scene;
let unknown: Scene;

/** What four evenings have taught, with a wish and a kind of which little is known. */
const taught: Partial<Record<WorkKind, Omit<KnownPace, "kind">>> = {
  cutting: { times: 1.3, steps: 14, evenings: 4, wish: null },
  mixing: { times: 1.02, steps: 9, evenings: 4, wish: null },
  plating: { times: 0.8, steps: 6, evenings: 3, wish: "as-written" },
  stove: { times: 1, steps: 1, evenings: 1, wish: null },
};

beforeAll(async () => {
  const { step } = await scenes();
  const { meal } = await ownPantry();
  const paces = knownPaces([], null).map((pace) => ({ ...pace, ...taught[pace.kind] }));
  const start = instant(Date.UTC(2031, 5, 14, 16, 40));
  const stopped = cookUntil(meal, start, ([first]) => first?.kind === "do", pacesFor(meal, paces));
  unknown = step;
  known = { ...step, events: stopped.log.events, now: stopped.now };
  open = await openPage();
});
afterAll(async () => open.close());

const key = (name: string | RegExp) => open.page.getByRole("button", { name });
const rows = async (): Promise<readonly string[]> =>
  (await open.page.locator("section:has(#drawer-pace) li").allInnerTexts()).map((text) =>
    text.replaceAll(/\s+/g, " "),
  );
const paceOfCutting = () =>
  ask(open.page, ({ store }) => {
    const cutting = store.session.value?.paces.find(({ kind }) => kind === "cutting");
    const tasks = store.session.value?.tasks.filter(({ dish, step }) =>
      cutting?.of.includes(`${dish.id}/${step.id}`),
    );
    return [...new Set(tasks?.map(({ pace }) => pace))];
  });

async function pullDrawer(scene: Scene): Promise<void> {
  await open.show(scene);
  await key(/^Kitchen$/).click();
  await open.page.locator("#drawer-pace").waitFor();
}

describe("how long the cook takes, on the screen", () => {
  it("[W80] is told for each kind of work, with what it was learnt from and what is planned", async () => {
    await pullDrawer(known);
    expect(await rows()).toEqual([
      "Cutting and peeling You take 1.3 times as long as the recipes say, from 14 steps on 4 evenings. Change",
      "Mixing and kneading You take about as long as the recipes say, from 9 steps on 4 evenings. Change",
      "Shaping and filling Nothing is known yet. Change",
      "Standing at the stove Too little is known yet: one step on one evening. Change",
      "Dressing and plating You take 0.8 times as long as the recipes say, from 6 steps on 3 evenings. Planned as the recipes say. Change",
    ]);
  });

  it("[W80] a meal from before paces were known says so", async () => {
    await pullDrawer(unknown);
    expect(await rows()).toEqual([]);
    expect(await open.page.getByText("The next meal that you begin will know.").count()).toBe(1);
    expect(await key("Forget how long I take").count()).toBe(0);
  });

  it("[W81] a touch sets it, the plan goes by it at once, and another has it as learnt again", async () => {
    await pullDrawer(known);
    expect(await paceOfCutting()).toEqual([1.3]);
    await key("Change: cutting and peeling").click();
    const choice = open.page.getByRole("group", { name: "How to plan cutting and peeling" });
    const wish = (name: string) => choice.getByRole("button", { name });
    expect(await wish("As learnt").getAttribute("aria-pressed")).toBe("true");
    await wish("Faster").click();
    await expect.poll(paceOfCutting).toEqual([0.85]);
    expect((await rows())[0]).toContain("Planned 0.85 times as long as the recipes say.");
    await wish("As the recipe says").click();
    await expect.poll(paceOfCutting).toEqual([1]);
    await wish("As learnt").click();
    await expect.poll(paceOfCutting).toEqual([1.3]);
  });

  it("[W81] at the stove nothing is offered as faster", async () => {
    await pullDrawer(known);
    await key("Change: standing at the stove").click();
    const offered = open.page.getByRole("group", { name: "How to plan standing at the stove" });
    expect(await offered.getByRole("button").allInnerTexts()).toEqual([
      "As learnt",
      "Slower",
      "As the recipe says",
    ]);
  });

  it("[W82] to forget it all is asked back; afterwards all is planned as the recipes say", async () => {
    await pullDrawer(known);
    await key("Forget how long I take").click();
    await key("No, keep it").click();
    expect(await paceOfCutting()).toEqual([1.3]);
    await key("Forget how long I take").click();
    await key("Yes, forget it").click();
    await expect.poll(paceOfCutting).toEqual([1]);
    expect((await rows()).every((row) => row.endsWith("Nothing is known yet. Change"))).toBe(true);
    expect(await key("Forget how long I take").count()).toBe(0);
  });

  it("[W1] [W4] [W5] axe finds nothing in it, with a choice and the question open; all of it can be touched", async () => {
    await pullDrawer(known);
    await key("Change: cutting and peeling").click();
    await key("Forget how long I take").click();
    expect(await open.lookedOver()).toEqual([]);
  });
});
