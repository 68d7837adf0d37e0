import { randomBytes } from "node:crypto";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { addModel } from "../../../server/models/add-model.ts";
import type { ServerProcess } from "./server-process.ts";
import { whistleModel } from "./whistle-model.ts";

/**
 * A models folder with the whistle model in it, added as a cook adds one.
 * @param folder of the model's files; the models folder lies in it
 * @param ballast bytes that make the model heavy
 */
export async function whistleShelf(folder: string, name: string, ballast: number): Promise<string> {
  const shelf = join(folder, "models");
  await addWhistle(shelf, name, "open", ballast);
  return shelf;
}

/** Adds another one to it. */
export async function addWhistle(
  shelf: string,
  name: string,
  graph: "open" | "fixed",
  ballast: number,
): Promise<void> {
  const files = { ...whistleModel(graph), "graph/ballast.bin": randomBytes(ballast) };
  const folder = join(shelf, "..", graph);
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(join(folder, path, ".."), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  await addTo(shelf, folder, name);
}

/** Adds whatever it is as `models add` does. Throws with the sentence where it is refused. */
export async function addTo(shelf: string, from: string, name: string): Promise<void> {
  const added = await addModel(
    { from, name, licence: "ours", sha256: null },
    { modelsFolder: shelf, signal: new AbortController().signal, tell: () => undefined },
  );
  if (!added.ok) throw new Error(added.error);
}

/** The addresses of the models that a server offers, in its order. */
export async function offered(server: ServerProcess): Promise<readonly string[]> {
  const answer = (await (await fetch(new URL("/speech/models", server.url))).json()) as {
    readonly models: readonly { readonly url: string }[];
  };
  return answer.models.map(({ url }) => url);
}
