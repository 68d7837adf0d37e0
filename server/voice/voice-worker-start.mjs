// A worker thread does not take TypeScript by itself: Node 20 hands it no loader, neither under `tsx` nor in a test
// runner, and `execArgv: ["--import", "tsx"]` is ignored off the main thread. This file loads the real one.
import { tsImport } from "tsx/esm/api";

await tsImport("./voice-worker.ts", import.meta.url);
