import type { BrowserContext, Page } from "playwright-core";
import type { Watched } from "../../../client/kitchen/watched.ts";

/** A page of the kitchen with everything that went wrong in it. */
export interface KitchenPage {
  readonly page: Page;
  /** Errors of its scripts, and what its security policy stopped. */
  readonly troubles: readonly string[];
  /** The captions that stood on the screen, each once, oldest first. */
  readonly captions: () => Promise<readonly string[]>;
  readonly watched: () => Promise<Watched>;
}

type Seen = { seenCaptions?: string[]; stovecall?: () => Watched };

/**
 * Opens the page so that it tells what it heard, said and rang.
 * @param prepare changes the page before it loads
 */
export async function openKitchen(
  context: BrowserContext,
  url: string,
  prepare: (page: Page) => Promise<void> = () => Promise.resolve(),
): Promise<KitchenPage> {
  const page = await context.newPage();
  await prepare(page);
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (/Content Security Policy/.test(message.text())) troubles.push(message.text());
  });
  await page.addInitScript(noteCaptions);
  await page.goto(`${url}#watch`);
  return {
    page,
    troubles,
    captions: () => page.evaluate(() => (globalThis as Seen).seenCaptions ?? []),
    watched: () =>
      page.evaluate(() => {
        const tell = (globalThis as Seen).stovecall;
        if (tell === undefined) throw new Error("the page tells nothing: its address lacks #watch");
        return tell();
      }),
  };
}

/** Runs in the page: keeps every text that the caption has shown. */
function noteCaptions(): void {
  const seen: string[] = [];
  (globalThis as Seen).seenCaptions = seen;
  const look = (): void => {
    const text = document.querySelector(".ear-said")?.textContent ?? "";
    if (text !== "" && seen.at(-1) !== text) seen.push(text);
  };
  new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
}

/** Begins the only meal of the start page: one touch picks it, the next lights the stove. */
export async function beginMeal({ page }: KitchenPage): Promise<void> {
  await page.locator("button.meal-face").click();
  await page.locator("button.key-light").click();
  await page.locator(".cooking").waitFor();
}

/** Types a sentence where one types instead of speaking. */
export async function typeSentence({ page }: KitchenPage, sentence: string): Promise<void> {
  const field = page.locator(".type-line input");
  if (!(await field.isVisible())) await page.locator(".ear-more > button.key").click();
  await field.fill(sentence);
  await field.press("Enter");
}
