import { spawn, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { createInterface } from "node:readline";

const root = join(import.meta.dirname, "..", "..");

/** A real `serve` in a process of its own, to be killed as rudely as a test likes. */
export interface ServerProcess {
  readonly url: string;
  readonly kill: (signal: "SIGKILL" | "SIGTERM") => Promise<number | null>;
}

/** Starts the server and waits for its address. Rejects with what it said when it ends instead. */
export async function startProcess(dataFolder: string, port = 0): Promise<ServerProcess> {
  const server = spawn(
    process.execPath,
    ["--import", "tsx", "server/main.ts", "serve", "--port", String(port), "--data", dataFolder],
    { cwd: root, stdio: ["ignore", "pipe", "pipe"] },
  );
  let said = "";
  server.stderr.on("data", (text: Buffer) => (said += text.toString()));
  const ended = once(server, "exit");
  const line = await Promise.race([
    once(createInterface(server.stdout), "line").then(([text]) => String(text)),
    ended.then(() => null),
  ]);
  if (line === null) throw new Error(said);
  return { url: line, kill: (signal) => end(server, signal, ended) };
}

async function end(
  server: ChildProcess,
  signal: NodeJS.Signals,
  ended: Promise<unknown>,
): Promise<number | null> {
  server.kill(signal);
  await ended;
  return server.exitCode;
}
