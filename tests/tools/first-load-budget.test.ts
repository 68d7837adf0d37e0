import { randomBytes } from "node:crypto";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { describe, expect, it } from "vitest";
import { firstLoadBudget } from "../../tools/first-load-budget.ts";

/** A page whose entry imports `sharedBytes` of noise at once and `lazyBytes` later; noise does not compress. */
async function buildPage(sharedBytes: number, lazyBytes: number, budgetBytes: number): Promise<void> {
  const root = mkdtempSync(join(tmpdir(), "stovecall-"));
  const noise = (bytes: number) => `export const noise = "${randomBytes(bytes).toString("base64")}";`;
  writeFileSync(join(root, "shared.js"), noise(sharedBytes));
  writeFileSync(join(root, "lazy.js"), noise(lazyBytes));
  writeFileSync(
    join(root, "main.js"),
    'import { noise } from "./shared.js"; console.log(noise); import("./lazy.js").then(console.log);',
  );
  writeFileSync(join(root, "index.html"), '<script type="module" src="./main.js"></script>');
  await build({
    root,
    configFile: false,
    logLevel: "silent",
    build: { write: false },
    plugins: [firstLoadBudget(budgetBytes)],
  });
}

describe("the budget of the first load", () => {
  it("[H5] lets a page pass whose weight is loaded lazily", async () => {
    await expect(buildPage(1_000, 50_000, 10_000)).resolves.toBeUndefined();
  });

  it("[H5] fails a page whose entry imports too much at once", async () => {
    await expect(buildPage(50_000, 1_000, 10_000)).rejects.toThrow("over its budget of 10000");
  });
});
