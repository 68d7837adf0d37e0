import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The checkout's root, with a trailing slash, wherever it was cloned to. */
export const root = fileURLToPath(new URL("../", import.meta.url));

const ownCommands = `${root}node_modules/.bin`;

/**
 * Runs one program in the checkout's root and shows what it prints. The checkout's own tools come first on
 * the PATH, so that `npx` is never asked to fetch one.
 * @param environment variables set on top of ours
 * @returns the exit code; 127 where the program does not exist, 1 where a signal ended it
 */
export function run(
  program: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<number> {
  const path = `${ownCommands}:${process.env["PATH"] ?? ""}`;
  const child = spawn(program, args, {
    cwd: root,
    stdio: "inherit",
    env: { ...process.env, PATH: path, ...environment },
  });
  return new Promise((settle) => {
    child.once("error", () => settle(127));
    child.once("exit", (code) => settle(code ?? 1));
  });
}
