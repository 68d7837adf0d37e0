import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;

beforeAll(async () => {
  const all = await scenes();
  open = await openPage();
  await open.show(all.step);
});
afterAll(async () => open.close());

describe("what is laid over the page", () => {
  it("[W163] the key that puts it away stays in sight, however far it has gone by", async () => {
    for (const [width, height] of [
      [1180, 820],
      [390, 844],
      [844, 390],
    ] as const) {
      await open.page.setViewportSize({ width, height });
      await open.page.getByRole("button", { name: "Kitchen", exact: true }).click();
      const sheet = open.page.locator(".sheet");
      await sheet.getByRole("button", { name: "End the meal" }).waitFor();
      await sheet.evaluate((one) => one.scrollTo(0, one.scrollHeight));
      expect(await sheet.evaluate((one) => one.scrollTop)).toBeGreaterThan(height);
      // It would not be touched where something else stood over it.
      await sheet.getByRole("button", { name: "Put away" }).click({ timeout: 5_000 });
      await sheet.waitFor({ state: "detached" });
    }
  });

  it("[W163] what has the focus does not stand behind the head", async () => {
    await open.page.setViewportSize({ width: 390, height: 844 });
    await open.page.getByRole("button", { name: "Kitchen", exact: true }).click();
    const sheet = open.page.locator(".sheet");
    await sheet.getByRole("button", { name: "End the meal" }).focus();
    for (let presses = 0; presses < 25; presses += 1) {
      await open.page.keyboard.press("Shift+Tab");
      const isBehind = await open.page.evaluate<boolean>(`(() => {
        const [head, one] = [document.querySelector(".sheet-head"), document.activeElement];
        if (head.contains(one)) return false;
        return one.getBoundingClientRect().top < head.getBoundingClientRect().bottom - 1;
      })()`);
      expect(isBehind, `after ${presses} presses`).toBe(false);
    }
    await open.page.keyboard.press("Escape");
  });

  it("[W164] a key at the top of the drawer leads to each of its parts", async () => {
    await open.page.getByRole("button", { name: "Kitchen", exact: true }).click();
    const doors = open.page.getByRole("navigation", { name: "Parts of this drawer" }).getByRole("button");
    await doors.first().waitFor();
    const titles = await open.page.locator(".drawer h3").allInnerTexts();
    expect(await doors.allInnerTexts()).toEqual(titles);
    await doors.filter({ hasText: "The voice" }).click();
    const title = open.page.locator(".drawer h3", { hasText: "The voice" });
    const [head, there] = [
      await open.page.locator(".sheet-head").boundingBox(),
      await title.boundingBox(),
    ] as const;
    const under = (there?.y ?? 0) - (head?.y ?? 0) - (head?.height ?? 0);
    expect(under).toBeGreaterThanOrEqual(0);
    expect(under).toBeLessThan(60);
    await open.page.keyboard.press("Tab");
    expect(await open.page.evaluate("document.activeElement.textContent")).toBe("Clear");
    expect([
      ...(await open.findings()),
      ...(await open.overflow()),
      ...(await open.smallTargets(48)),
    ]).toEqual([]);
  });
});
