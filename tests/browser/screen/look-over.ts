import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds on a page as it stands, each as one line; empty where all is well. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate("'axe' in globalThis"))) await page.evaluate(axe);
  // The enhanced contrast rule is off unless asked for; it is the one that wants 7:1.
  const results = await page.evaluate<AxeResults>(
    "axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } })",
  );
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, any }) => `${id}: ${target.join(" ")} ${any[0]?.message ?? ""}`),
  );
}

/** By how much a page is too wide, as one line; empty where it fits. */
export const overflowOf = (page: Page): Promise<readonly string[]> =>
  page.evaluate<readonly string[]>(`(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth > clientWidth ? ["the page is " + (scrollWidth - clientWidth) + " px too wide"] : [];
  })()`);

/** Visible controls narrower or lower than `least` CSS pixels, one line each. */
export const smallTargetsOf = (page: Page, least: number): Promise<readonly string[]> =>
  page.evaluate<
    readonly string[]
  >(`[...document.querySelectorAll("button, summary, input")].flatMap((one) => {
    const { width, height } = one.getBoundingClientRect();
    const isSmall = width > 0 && (width < ${least} || height < ${least});
    return isSmall ? [(one.textContent || one.name) + ": " + width + " by " + height] : [];
  })`);
