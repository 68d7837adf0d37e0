import type { Model } from "vosk-browser";
import { err, ok, type Result } from "../../core/units/result.ts";
import type { ModelLoading } from "./engine.ts";
import { keepOnly } from "./vosk-storage.ts";
import { loadingEvent, watchFetches } from "./watched-fetch.ts";

/** Without a sign of life for so long something is wrong, and the engine never says so itself. */
const silenceLimitMs = 90_000;

/**
 * Loads a model into the engine. On failure nothing of it stays in the browser; the engine's worker stays until its
 * frame goes, because one whose model did not load cannot be ended.
 * @param onLoading told several times a second while it is fetched
 * Error: one sentence.
 */
export async function loadVoskModel(
  url: string,
  onLoading: (loading: ModelLoading) => void,
): Promise<Result<Model, string>> {
  onLoading({ stage: "starting" });
  await keepOnly(url);
  const loaded = await load(url, onLoading);
  if (!loaded.ok) await keepOnly(null);
  return loaded;
}

async function load(url: string, onLoading: (loading: ModelLoading) => void): Promise<Result<Model, string>> {
  const unusable = (reason: string): Result<Model, string> =>
    err(`The Vosk model ${nameOf(url)} cannot be used (${reason}).`);
  try {
    const { Model: VoskModel } = await import("vosk-browser");
    watchFetches();
    const model = new VoskModel(url, -1);
    return await new Promise((resolve) => {
      let limit: ReturnType<typeof setTimeout> | undefined;
      const give = (result: Result<Model, string>): void => {
        clearTimeout(limit);
        resolve(result);
      };
      const alive = (): void => {
        clearTimeout(limit);
        limit = setTimeout(
          () => give(unusable(`nothing came of it in ${silenceLimitMs / 1000} seconds`)),
          silenceLimitMs,
        );
      };
      alive();
      model.addEventListener(loadingEvent, (event) => {
        alive();
        onLoading((event as CustomEvent<{ readonly loading: ModelLoading }>).detail.loading);
      });
      model.on("load", (message) => {
        give(message.event === "load" && message.result ? ok(model) : unusable("it could not be read"));
      });
      model.on("error", (message) =>
        give(unusable(reasonOf(message.event === "error" ? message.error : undefined))),
      );
    });
  } catch (thrown) {
    return unusable(`its engine did not start: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
}

/** "/speech/models/1f0c…/small-en.tar.gz": "small-en". */
const nameOf = (url: string): string => (url.split("/").at(-1) ?? url).replace(/\.(?:tar\.gz|tgz)$/, "");

/** The engine throws bare addresses in its memory, or nothing, where it cannot read a model. */
function reasonOf(error: unknown): string {
  if (typeof error !== "string" || error === "" || /^\d+$/.test(error))
    return "there is no model in it that the engine can read";
  return error.startsWith("HTTP error")
    ? "the server does not give it"
    : error.replaceAll(/\s+/g, " ").replace(/[.!]$/, "");
}
