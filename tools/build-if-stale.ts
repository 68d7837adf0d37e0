import { readdirSync, statSync } from "node:fs";
import { root, run } from "./run.ts";

const built = "dist/client/index.html";
const sources = ["client", "core", "package-lock.json", "vite.config.ts"];

/** The moment of the newest change at or below a path, in epoch milliseconds; 0 where there is nothing. */
function newestChange(path: string): number {
  const entry = statSync(root + path, { throwIfNoEntry: false });
  if (entry === undefined) return 0;
  if (!entry.isDirectory()) return entry.mtimeMs;
  const below = readdirSync(root + path).map((name) => newestChange(`${path}/${name}`));
  return Math.max(entry.mtimeMs, ...below);
}

if (Math.max(...sources.map(newestChange)) > newestChange(built)) {
  process.exitCode = await run("vite", ["build", "--logLevel", "warn"]);
}
