import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, vi } from "vitest";
import { modelsCommand } from "../../server/cli/models.ts";
import { runCli } from "../../server/cli/run-cli.ts";
import { addModel, type Addition, type AddParts } from "../../server/models/add-model.ts";

/** A models folder of its own for each test, and what the command line printed. */
export class ModelShelf {
  folder = "";
  models = "";
  out: string[] = [];
  told: string[] = [];

  /** Runs `models` with these words. */
  readonly cli = (...words: readonly string[]): Promise<number> =>
    runCli(["models", ...words, "--models", this.models], [modelsCommand]);

  readonly add = (from: string, parts: Partial<AddParts> = {}, addition: Partial<Addition> = {}) =>
    addModel(
      { from, name: null, licence: "ours", sha256: null, ...addition },
      { modelsFolder: this.models, signal: new AbortController().signal, tell: () => undefined, ...parts },
    );

  /** A file beside the models folder. */
  readonly write = (name: string, content: Buffer | string): string => {
    const path = join(this.folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return path;
  };

  readonly inModels = (): readonly string[] => readdirSync(this.models).toSorted();
}

/** Sets one up before each test and clears it away after. */
export function useShelf(): ModelShelf {
  const shelf = new ModelShelf();
  beforeEach(() => {
    shelf.folder = mkdtempSync(join(tmpdir(), "models-"));
    shelf.models = join(shelf.folder, "models");
    mkdirSync(shelf.models);
    [shelf.out, shelf.told] = [[], []];
    vi.spyOn(console, "log").mockImplementation((text: string) => void shelf.out.push(...text.split("\n")));
    vi.spyOn(console, "error").mockImplementation((text: string) => void shelf.told.push(text));
  });
  afterEach(() => {
    vi.restoreAllMocks();
    rmSync(shelf.folder, { recursive: true, force: true });
  });
  return shelf;
}
