// As with the voice's thread: a worker thread takes no TypeScript by itself, so this file loads the real one.
import { tsImport } from "tsx/esm/api";

await tsImport("./course-worker.ts", import.meta.url);
