import { fileURLToPath } from "node:url";

/** The absolute path of something that comes with the program, wherever the command was started. */
export const inProgram = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
