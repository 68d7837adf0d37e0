import { mkdir, writeFile } from "node:fs/promises";
import { recipeSchemas } from "../core/recipe/json-schema.ts";

/** Writes recipes/schema/*.json from the schemas that the reader itself uses: `npx tsx tools/recipe-schemas.ts`. */
const folder = new URL("../recipes/schema/", import.meta.url);
await mkdir(folder, { recursive: true });
for (const [name, text] of recipeSchemas()) await writeFile(new URL(`${name}.json`, folder), text);
