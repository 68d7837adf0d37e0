import { checkCommand } from "./cli/check.ts";
import { amountsCommand } from "./cli/amounts.ts";
import { hearCommand } from "./cli/hear.ts";
import { leftCommand } from "./cli/left.ts";
import { miseCommand } from "./cli/mise.ts";
import { modelsCommand } from "./cli/models.ts";
import { paceCommand } from "./cli/pace.ts";
import { planCommand } from "./cli/plan.ts";
import { rehearseCommand } from "./cli/rehearse.ts";
import { runCli } from "./cli/run-cli.ts";
import { serveCommand } from "./cli/serve.ts";
import { shopCommand } from "./cli/shop.ts";
import { valuesCommand } from "./cli/values.ts";
import { weekCommand } from "./cli/week.ts";

process.exitCode = await runCli(process.argv.slice(2), [
  serveCommand,
  planCommand,
  rehearseCommand,
  hearCommand,
  paceCommand,
  valuesCommand,
  checkCommand,
  amountsCommand,
  shopCommand,
  weekCommand,
  leftCommand,
  miseCommand,
  modelsCommand,
]);
