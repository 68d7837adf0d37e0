import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Figures, figuresSchema, mergedFigures } from "./heard-figures.ts";
import { pictureOf } from "./picture.ts";

/**
 * Keeps figures in a folder, as voice.json and as a picture, beside those that stand there and were not measured now.
 * @throws where voice.json is there and is none
 */
export function keepFigures(folder: string, now: Figures): void {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, "voice.json");
  const before = existsSync(path)
    ? figuresSchema.parse(JSON.parse(readFileSync(path, "utf8")))
    : { heard: [], overheard: [] };
  const all = mergedFigures(before, now);
  writeFileSync(path, `${JSON.stringify(all, null, 2)}\n`);
  writeFileSync(join(folder, "voice.svg"), pictureOf(all.heard));
}
