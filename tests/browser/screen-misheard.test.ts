import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";
import type { SceneName } from "./screen/scenes.ts";

let open: OpenPage;
let all: Readonly<Record<SceneName, Scene>>;

beforeAll(async () => {
  all = await scenes();
  open = await openPage();
});
afterAll(async () => open.close());

const key = (name: string | RegExp) => open.page.getByRole("button", { name });
const textsOf = (which: string) => open.page.locator(which).allInnerTexts();

/** The drawer is pulled over a scene. */
async function pullDrawer(name: SceneName): Promise<void> {
  await open.show(all[name]);
  await key(/^Kitchen$/).click();
  await key("Keep nothing").waitFor();
}

/** The list is laid over the drawer. */
async function openList(): Promise<void> {
  await pullDrawer("misheard");
  await key("Listen to four sentences").click();
  await open.page.locator(".misheard-item").first().waitFor();
}

describe("the record of misheard sentences on the screen", () => {
  it("[W45] is off until the cook turns it on, and says what is kept, where, how much, and how to be rid of it", async () => {
    await pullDrawer("step");
    expect(await key("Keep nothing").getAttribute("aria-pressed")).toBe("true");
    const words = (await textsOf("section:has(#drawer-misheard) .hint")).join(" ");
    for (const told of [
      "came to nothing after “listen kitchen”",
      "asked back",
      "undid or said no to within 30 seconds",
      "in this browser on this device",
      "never sent anywhere",
      "at most 100 sentences of 12 seconds (39 MB)",
      "delete them here",
    ])
      expect(words).toContain(told);
    await key("Keep what is misheard").click();
    expect(await key("Keep what is misheard").getAttribute("aria-pressed")).toBe("true");
  });

  it("[W45] turned off it asks whether to delete what is there, and does what is answered", async () => {
    await pullDrawer("misheard");
    await key("Keep nothing").click();
    await key("No, leave them here").click();
    expect(await key("Listen to four sentences").count()).toBe(1);
    await key("Keep what is misheard").click();
    await key("Keep nothing").click();
    await key("Yes, delete them").click();
    await expect.poll(() => key(/^Listen to/).count()).toBe(0);
    expect(await open.page.locator(".misheard-ask").count()).toBe(0);
  });

  it("[W46] a mark at the ear says that it is on, and nothing where it is off", async () => {
    await open.show(all.misheard);
    expect(await textsOf(".ear-keeps")).toEqual(["keeps what is misheard"]);
    await open.show(all.step);
    expect(await textsOf(".ear-keeps")).toEqual([]);
  });

  it("[W47] [W48] lists when, what was heard and what came of it, the newest first, and how often above", async () => {
    await openList();
    expect((await textsOf(".misheard-words")).map((text) => text.replaceAll(/\s+/g, " "))).toEqual([
      expect.stringMatching(/ pm Heard only its name came to nothing$/),
      expect.stringMatching(/ pm Heard “pause the timer” you took it back$/),
      expect.stringMatching(/ pm Heard “set a timer for fifty minutes” was asked back$/),
      expect.stringMatching(/ pm Heard “nest stab” came to nothing → you said “next step”$/),
    ]);
    expect(await textsOf(".misheard-tally li")).toEqual([
      "“next step” was misheard once.",
      "Not corrected yet: three sentences.",
    ]);
  });

  it("[W47] [W48] one is corrected by a touch, by typing, and to what was heard after all", async () => {
    await openList();
    await key(/^Correct: .*fifty/).click();
    await key("set a timer for fifteen minutes").click();
    await key(/^Correct: .*only its name/).click();
    await open.page.getByLabel("Or type it").fill("  Next   Step ");
    await key("That was it").click();
    await key(/^Correct: .*pause/).click();
    await key("pause the timer").last().click();
    await expect
      .poll(() => textsOf(".misheard-meant"))
      .toEqual([
        "→ you said “next step”",
        "→ and that was right",
        "→ you said “set a timer for fifteen minutes”",
        "→ you said “next step”",
      ]);
    expect(await textsOf(".misheard-tally li")).toEqual([
      "“next step” was misheard twice.",
      "“set a timer for fifteen minutes” was misheard once.",
      "Each one is corrected.",
    ]);
  });

  it("[W47] one is played and stopped, one is deleted, and to delete all is asked back", async () => {
    await openList();
    await key(/^Play: .*pause/).click();
    await key(/^Stop: .*pause/).waitFor();
    await key(/^Delete: .*pause/).click();
    await expect.poll(() => open.page.locator(".misheard-item").count()).toBe(3);
    await key("Delete all").click();
    await key("No, leave them here").click();
    expect(await open.page.locator(".misheard-item").count()).toBe(3);
    await key("Delete all").click();
    await key("Yes, delete them").click();
    await expect.poll(() => textsOf(".misheard-item")).toEqual([]);
  });

  it("[W1] [W4] [W5] axe finds nothing in drawer, list, correction and question; all of it can be touched", async () => {
    await pullDrawer("misheard");
    await key("Keep nothing").click();
    expect(await open.lookedOver()).toEqual([]);
    await openList();
    await key(/^Correct: .*fifty/).click();
    await key("Delete all").click();
    expect(await open.lookedOver()).toEqual([]);
  });

  it("[W47] with nothing on the stove it is reached from the start page, by who keeps a record", async () => {
    await open.show({ ...all.start, misheard: all.misheard.misheard });
    await key("Listen to what was misheard").click();
    await expect.poll(() => open.page.locator(".misheard-item").count()).toBe(4);
    expect(await open.findings()).toEqual([]);
    await key("Delete all").click();
    await key("Yes, delete them").click();
    await expect.poll(() => textsOf(".misheard-tally li")).toEqual(["Nothing is kept."]);
    await open.show(all.start);
    expect(await key("Listen to what was misheard").count()).toBe(0);
  });

  it("[W6] the list goes away with Escape, and leaves the drawer", async () => {
    await openList();
    await open.page.keyboard.press("Escape");
    await expect.poll(() => open.page.locator(".misheard-item").count()).toBe(0);
    expect(await key("Keep nothing").count()).toBe(1);
  });
});
