import { spawn, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { root } from "../../../tools/run.ts";

/** A real server in a process of its own, so that a test may kill it as a power cut would. */
export interface ServerProcess {
  /** Where its page is, with a slash at the end. */
  readonly url: string;
  readonly port: number;
  /** SIGKILL: nothing is tidied up. Resolves when the process is gone. */
  readonly kill: () => Promise<void>;
  /** SIGTERM, the ordinary way. */
  readonly stop: () => Promise<void>;
}

/** The meal that the kitchen tests cook: every timer rings within a minute and a half. */
const recipes = `${root}tests/browser/recipes`;

/**
 * Starts `serve` and waits for its address.
 * @param data the folder of the meal log
 * @param port 0 for any free one
 * @param more further options of `serve`
 */
export async function startServerProcess(
  data: string,
  port = 0,
  more: readonly string[] = [],
): Promise<ServerProcess> {
  const usual = ["serve", "--port", String(port), "--data", data, "--recipes", recipes];
  const words = ["server/main.ts", ...usual, ...more];
  const child = spawn(process.execPath, ["--import", "tsx", ...words], {
    cwd: root,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const complaints: string[] = [];
  child.stderr.setEncoding("utf8").on("data", (text: string) => complaints.push(text));
  const url = await firstLine(child);
  if (url === null) throw new Error(`the server did not start: ${complaints.join("")}`);
  return {
    url,
    port: Number(new URL(url).port),
    kill: () => end(child, "SIGKILL"),
    stop: () => end(child, "SIGTERM"),
  };
}

function firstLine(child: ChildProcess): Promise<string | null> {
  const { stdout } = child;
  if (stdout === null) return Promise.resolve(null);
  const lines = createInterface({ input: stdout });
  return Promise.race([
    once(lines, "line").then(([line]) => String(line)),
    once(child, "exit").then(() => null),
  ]);
}

async function end(child: ChildProcess, signal: "SIGKILL" | "SIGTERM"): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, "exit");
  child.kill(signal);
  await gone;
}
