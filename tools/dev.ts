import { run } from "./run.ts";

// One origin and one security policy, as in the kitchen: the server serves what vite rebuilds on every save.
const built = await run("vite", ["build"]);
if (built === 0) {
  const ended = await Promise.race([
    run("vite", ["build", "--watch", "--logLevel", "warn"]),
    run("tsx", ["watch", "server/main.ts", "serve", ...process.argv.slice(2)]),
  ]);
  process.exit(ended);
}
process.exitCode = built;
