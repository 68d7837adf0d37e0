import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { findChromium, installMissing } from "../../tools/system-packages.ts";

afterEach(() => {
  vi.unstubAllEnvs();
});

describe("what the tests need from the system", () => {
  it("[H4] says nothing when everything is there", async () => {
    expect(await installMissing([{ name: "sox", isThere: () => true }])).toBeNull();
  });

  it("[H4] names what is missing and the command that brings it, where it may install nothing", async () => {
    vi.stubEnv("PATH", mkdtempSync(join(tmpdir(), "stovecall-")));
    const sentence = await installMissing([
      { name: "sox", isThere: () => true },
      { name: "flite", isThere: () => false },
    ]);
    expect(sentence).toContain("The tests need flite and could not install that.");
    expect(sentence).toContain('"sudo apt-get install flite"');
  });

  it("[H4] takes the browser that CHROMIUM names, and no other when that one cannot be run", () => {
    const folder = mkdtempSync(join(tmpdir(), "stovecall-"));
    const browser = join(folder, "browser");
    writeFileSync(browser, "", { mode: 0o755 });
    vi.stubEnv("CHROMIUM", browser);
    expect(findChromium()).toBe(browser);
    vi.stubEnv("CHROMIUM", join(folder, "absent"));
    expect(findChromium()).toBeNull();
  });

  it("[H4] looks for the browser along the PATH when CHROMIUM is not set", () => {
    const folder = mkdtempSync(join(tmpdir(), "stovecall-"));
    writeFileSync(join(folder, "chromium-browser"), "", { mode: 0o755 });
    vi.stubEnv("CHROMIUM", "");
    vi.stubEnv("PATH", folder);
    expect(findChromium()).toBe(join(folder, "chromium-browser"));
  });
});
