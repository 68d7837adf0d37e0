import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { findChromium, installMissing, testPackages } from "./system-packages.ts";
import { root, run } from "./run.ts";
import { tally, together, type Tally } from "./tally.ts";

const reports = `${root}tests/.out`;

/** Runs one vitest project with what the caller asked for (file names, -t) and counts its tests. */
async function project(name: string, chromium: string): Promise<Tally> {
  console.log(`\n== ${name} tests`);
  const file = `${reports}/${name}.json`;
  rmSync(file, { force: true });
  const exitCode = await run(
    "vitest",
    [
      "run",
      "--passWithNoTests",
      ...["--project", name],
      ...["--reporter=default", "--reporter=json", `--outputFile.json=${file}`],
      ...process.argv.slice(2),
    ],
    { CHROMIUM: chromium },
  );
  return tally(existsSync(file) ? readFileSync(file, "utf8") : null, exitCode);
}

async function main(): Promise<number> {
  const missing = await installMissing(testPackages);
  const chromium = findChromium();
  if (missing !== null || chromium === null) {
    console.error(missing ?? "CHROMIUM names no program that can be run.");
    return 1;
  }
  if ((await run("vite", ["build", "--logLevel", "warn"])) !== 0) {
    console.error("The page does not build, so its tests cannot run. See above.");
    return 1;
  }
  mkdirSync(reports, { recursive: true });
  const node = await project("node", chromium);
  const { passed, failed, complaints } = together(node, await project("browser", chromium));
  // Once more at the end: whoever sees only the last lines must know what to look for.
  for (const complaint of complaints) console.log(`\nfailed: ${complaint}`);
  console.log(`\n${passed} passed, ${failed} failed`);
  // Nothing run is nothing proved: a misspelt file name must not look like success.
  return failed === 0 && passed > 0 ? 0 : 1;
}

process.exitCode = await main();
