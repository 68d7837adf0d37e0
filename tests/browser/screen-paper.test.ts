import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyLog } from "../../core/cook/fold.ts";
import { runSheetOf } from "../../core/cook/run-sheet.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { instant, minutes, plus } from "../../core/units/quantity.ts";
import { give, ownPantry } from "./screen/evening.ts";
import { longMeal } from "./screen/long-meal.ts";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let busy: Scene;
let shipped: readonly CookingMeal[];

beforeAll(async () => {
  ({ busy } = await scenes());
  ({ all: shipped } = await ownPantry());
  open = await openPage();
});
afterAll(async () => open.close());

const start = instant(Date.UTC(2031, 5, 14, 16, 40));

/** An evening that has just begun, with how many steps and how many turns of an oven it has. */
function begun(meal: CookingMeal): { readonly scene: Scene; readonly steps: number; readonly turns: number } {
  const log = give(emptyLog, start, { type: "BeginMeal", meal, serveAt: plus(start, minutes(220)) });
  if (log.session === null) throw new Error("the meal has not begun");
  const { entries, ovenMoves } = runSheetOf(log.session, start);
  return {
    scene: { ...busy, events: log.events, now: start },
    steps: entries.length,
    turns: ovenMoves.length,
  };
}

/** A printer's paper, in inches; ISO 216 has A4 as 210 by 297 mm. */
const papers = { A4: [210 / 25.4, 297 / 25.4], Letter: [8.5, 11] } as const;

/** What Chromium would print, and how many points wide and high its pages are; it rounds A4's height up. */
async function printed(paper: keyof typeof papers): Promise<readonly (readonly number[])[]> {
  const browser = await open.page.context().newCDPSession(open.page);
  const [paperWidth, paperHeight] = papers[paper];
  const { data } = await browser.send("Page.printToPDF", {
    preferCSSPageSize: true,
    paperWidth,
    paperHeight,
  });
  const pdf = Buffer.from(data, "base64").toString("latin1");
  const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
  const sizes = [...pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(sizes.length).toBe(pages.length);
  return sizes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
}

/** Sets the paper up as a browser does before it prints, and holds it there to be looked at. */
async function held(scene: Scene): Promise<void> {
  await open.show(scene);
  await open.page.emulateMedia({ media: "print" });
  await open.page.evaluate("window.dispatchEvent(new Event('beforeprint'))");
}
const texts = (selector: string): Promise<readonly string[]> => open.page.locator(selector).allTextContents();

describe("the run sheet on paper", () => {
  it("[W75] every meal that ships and one of forty steps take one page each on their side, A4 or Letter", async () => {
    expect(begun(longMeal).steps).toBeGreaterThanOrEqual(40);
    for (const meal of [...shipped, longMeal]) {
      const { scene } = begun(meal);
      await open.show(scene);
      expect(await printed("A4"), meal.name).toEqual([[842, 596]]);
      expect(await printed("Letter"), meal.name).toEqual([[792, 612]]);
    }
  });

  it("[W75] all of it stands on the page, in letters of 7 points at least", async () => {
    for (const meal of [...shipped, longMeal]) {
      const { scene, steps, turns } = begun(meal);
      await held(scene);
      // CSS Values 3: a point is 4/3 of a CSS pixel.
      const least = await open.page.evaluate<number>(`Math.min(...[...document.querySelectorAll(".paper *")]
        .filter((one) => [...one.childNodes].some((child) => child.nodeType === 3 && child.data.trim() !== ""))
        .map((one) => Number.parseFloat(getComputedStyle(one).fontSize) * 0.75))`);
      expect(Math.round(least * 100) / 100, meal.name).toBeGreaterThanOrEqual(7);
      const out = await open.page.evaluate<readonly string[]>(`(() => {
        const page = document.querySelector(".paper").getBoundingClientRect();
        return [...document.querySelectorAll(".paper li, .paper footer, .paper h1, .paper svg")].flatMap((one) => {
          const box = one.getBoundingClientRect();
          const isOut = box.left < page.left - 1 || box.right > page.right + 1 || box.bottom > page.bottom + 1;
          return isOut || one.scrollWidth > one.clientWidth + 1 ? [one.textContent] : [];
        });
      })()`);
      expect(out, meal.name).toEqual([]);
      // Each step, the turns of the oven, and the table.
      expect(await open.page.locator(".paper-list > li").count(), meal.name).toBe(steps + turns + 1);
    }
  });

  it("[W76] it has the picture with its key, and every step by the clock with dish, minutes and place", async () => {
    await held(busy);
    expect(await texts(".paper h1")).toEqual(["Welcome Supper"]);
    expect(await texts(".paper-head p")).toEqual([
      expect.stringMatching(/^On the table 6:\d\d pm · printed 5:\d\d pm$/),
    ]);
    expect(await texts(".paper .picture-key li")).toContain("Dinner waits for these");
    expect(await open.page.locator(".paper .lane-awaited").count()).toBeGreaterThan(1);
    expect(await texts(".paper .flag text")).toContainEqual(expect.stringMatching(/^printed 5:\d\d$/));
    const rows = await texts(".paper-list > li");
    const clocks = rows.map((row) => /^(\d):(\d\d)/.exec(row)?.slice(1).map(Number) ?? []);
    const all = clocks.map(([hour = 0, minute = 0]) => hour * 60 + minute);
    expect(all).toEqual(all.toSorted((a, b) => a - b));
    expect(rows).toContainEqual(
      expect.stringMatching(/^\d:\d\dC Carrots: roast the carrots.*30-35 min · oven 390°F$/),
    );
    expect(rows).toContainEqual(expect.stringMatching(/^\d:\d\dTurn the oven to 390°Foven$/));
    expect(rows).toContainEqual(
      expect.stringMatching(/^\d:\d\dF Flatbreads: griddle the breads \(2 of 3\)3-4 min · burner 2$/),
    );
    expect(rows.at(-1)).toMatch(/^6:\d\dOn the table$/);
    expect(await open.page.locator(".paper-list .is-awaited").count()).toBeGreaterThan(1);
    expect(await open.page.locator(".paper-tick.is-done").count()).toBeGreaterThan(5);
  });

  it("[W76] it says what to take care of", async () => {
    await held(busy);
    const care = (await texts(".paper-care")).join(" ");
    expect(care).toContain("Flatbreads: Contains wheat.");
    expect(care).toContain("Never leave a hot stove alone.");
    expect(care).toContain("within two hours");
  });

  it("[W77] black on white in whatever look, without a key on it", async () => {
    for (const look of ["light", "dark", "contrast"] as const) {
      await held({ ...busy, look });
      const colours = await open.page.evaluate<readonly string[]>(`[...new Set(
        [...document.querySelectorAll(".paper li, .paper h1, .paper footer")].map((one) => getComputedStyle(one).color)
      )]`);
      expect(colours, look).toEqual(["rgb(0, 0, 0)"]);
      const fills = await open.page.evaluate<readonly string[]>(`[...new Set(
        [...document.querySelectorAll(".paper .lane-fill")].map((one) => getComputedStyle(one).fill)
      )]`);
      expect(fills, look).toEqual(["rgb(255, 255, 255)"]);
      expect(await open.page.locator("button:visible, input:visible, a:visible").count()).toBe(0);
    }
    await open.page.evaluate("window.dispatchEvent(new Event('afterprint'))");
    expect(await open.page.locator(".paper").count()).toBe(0);
    await open.page.emulateMedia({ media: null });
  });

  it("[W78] the key of the large picture prints, and what is printed from there is the same page", async () => {
    await open.show(busy);
    await open.page.locator(".evening-open").click();
    const key = open.page.getByRole("button", { name: "Print" });
    expect((await key.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    await open.page.evaluate("window.print = () => { document.title = 'printing'; }");
    await key.click();
    expect(await open.page.title()).toBe("printing");
    expect(await printed("A4")).toEqual([[842, 596]]);
  });

  it("[W79] more than a page holds goes on on the next one, and nothing is cut off", async () => {
    const dishes = [1, 2, 3, 4].flatMap((night) =>
      longMeal.dishes.map((dish) => ({ ...dish, id: `${dish.id}-${night}` as typeof dish.id })),
    );
    const { scene } = begun({ ...longMeal, dishes });
    await open.show(scene);
    const pages = await printed("A4");
    expect(pages.length).toBeGreaterThan(1);
    await held(scene);
    expect(await open.page.evaluate("document.querySelector('.paper').scrollHeight")).toBe(
      await open.page.evaluate("document.querySelector('.paper').clientHeight"),
    );
    expect((await texts(".paper-list > li")).at(-1)).toContain("On the table");
    await open.page.emulateMedia({ media: null });
  });
});
