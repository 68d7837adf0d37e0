import { run } from "./run.ts";

type Check = { readonly name: string; readonly program: string; readonly args: readonly string[] };

const projects = ["core", "server", "client", "client/workers", "tests", "."];

const checks: readonly Check[] = [
  { name: "format", program: "prettier", args: ["--check", "--log-level", "warn", "."] },
  ...projects.map((project) => ({ name: `types of ${project}`, program: "tsc", args: ["-p", project] })),
  { name: "lint", program: "eslint", args: ["--max-warnings", "0", "."] },
  { name: "styles", program: "stylelint", args: ["client/**/*.css", "--allow-empty-input"] },
  {
    name: "arrows",
    program: "depcruise",
    args: ["--output-type", "err", "core", "server", "client", "tests", "tools"],
  },
  { name: "dead code", program: "knip", args: [] },
];

// Every check runs even after one has failed: one round tells all that there is to mend.
const failed: string[] = [];
for (const { name, program, args } of checks) {
  console.log(`- ${name}`);
  if ((await run(program, args)) !== 0) failed.push(name);
}
console.log(failed.length === 0 ? "All checks passed." : `Mend these: ${failed.join(", ")}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
