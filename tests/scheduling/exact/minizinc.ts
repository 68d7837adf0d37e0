import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";

const require = createRequire(import.meta.url);

/** The solver's part of the browser build speaks to its page; this lets it speak to the thread that began it. */
const shim = `
const port = require("node:worker_threads").parentPort;
globalThis.postMessage = (message) => port.postMessage(message);
globalThis.addEventListener = (kind, listen) => {
  if (kind === "message") port.on("message", (data) => listen({ data }));
};
globalThis.__dirname = ".";
`;

/** The last solution by the names of the model's variables, and whether the search came to its end. */
export interface Solved {
  readonly status: "optimal" | "impossible" | "unfinished";
  readonly values: Readonly<Record<string, number>> | null;
}

/** What the worker says, as far as it is of use here. */
type Said =
  | { readonly type: "solution"; readonly output: { readonly json: Readonly<Record<string, number>> } }
  | { readonly type: "status"; readonly status: string }
  | { readonly type: "error"; readonly message: string }
  | { readonly type: "exit"; readonly code: number }
  | { readonly type: "ready" | "statistics" | "warning" | "stdout" | "stderr" };

const job = (model: string) => ({
  jsonStream: true,
  files: { "network.mzn": model },
  // -i: every better solution is told, so that one is known when the time is up. -f: the solver's own search.
  args: ["--solver", "org.minizinc.chuffed", "-f", "-i", "--output-mode", "json", "network.mzn"],
});

function statusOf(text: string): Solved["status"] {
  if (text === "OPTIMAL_SOLUTION") return "optimal";
  return text === "UNSATISFIABLE" ? "impossible" : "unfinished";
}

/**
 * Solves a MiniZinc model that minimises, with the Chuffed solver of npm `minizinc` (WebAssembly).
 * The package's own Node entry wants a native program, so its browser build runs in a thread. Each solve gets a
 * new one, as it does in the package itself: what the solver has taken of memory it does not give back.
 * @param limitMs after so long the thread is stopped: "unfinished", with the best so far
 * @throws when the package is not there or the model is not understood, which is a mistake of ours
 */
export function solve(model: string, limitMs: number): Promise<Solved> {
  const worker = new Worker(shim + readFileSync(require.resolve("minizinc/minizinc-worker.js"), "utf8"), {
    eval: true,
  });
  return new Promise((resolve, reject) => {
    let values: Solved["values"] = null;
    let status: Solved["status"] = "unfinished";
    let complaint: string | null = null;
    const finish = (): void => {
      clearTimeout(timeout);
      void worker.terminate();
      if (complaint === null) resolve({ status, values });
      else reject(new Error(`the model is not understood: ${complaint}`));
    };
    const timeout = setTimeout(finish, limitMs);
    worker.on("error", (error) => {
      clearTimeout(timeout);
      reject(error);
    });
    worker.on("message", (said: Said) => {
      if (said.type === "solution") values = said.output.json;
      else if (said.type === "status") status = statusOf(said.status);
      else if (said.type === "error") complaint = said.message;
      else if (said.type === "exit") {
        if (said.code !== 0) complaint ??= `it ended with ${said.code}`;
        finish();
      }
    });
    worker.postMessage({
      wasmURL: require.resolve("minizinc/minizinc.wasm"),
      dataURL: require.resolve("minizinc/minizinc.data"),
    });
    worker.once("message", () => worker.postMessage(job(model)));
  });
}
