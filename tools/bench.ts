import { readdirSync } from "node:fs";
import { root, run } from "./run.ts";

// `npm run bench` runs every bench in turn; `npm run bench -- grammar first-load` only those.
const folder = "tests/bench";
const suffix = ".bench.ts";
const known = readdirSync(root + folder)
  .filter((name) => name.endsWith(suffix))
  .map((name) => name.slice(0, -suffix.length))
  .sort();
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !known.includes(name));

if (unknown.length > 0) {
  console.error(`There is no bench named ${unknown.join(", ")}. There are: ${known.join(", ")}.`);
  process.exitCode = 2;
} else {
  for (const name of asked.length > 0 ? asked : known) {
    console.log(`\n== ${name}`);
    if ((await run("tsx", [`${folder}/${name}${suffix}`])) !== 0) process.exitCode = 1;
  }
}
