import { serveCommand } from "./cli/serve.ts";
import { runCli } from "./cli/run-cli.ts";

process.exitCode = await runCli(process.argv.slice(2), [serveCommand]);
