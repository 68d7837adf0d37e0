import type { EngineChoice } from "./engine.ts";

/** One Vosk model as `/speech/models` lists it. */
type OfferedModel = { readonly kind: "vosk"; readonly url: string };

/**
 * Asks our server which recogniser to use: a Vosk model where it offers one, else the embedded engine.
 * A server that is gone or answers nonsense means the embedded engine, which always works.
 * Shape of the answer: {"models":[{"kind":"vosk","url":"/speech/models/SHA256/NAME.tar.gz"}]}.
 */
export async function chooseEngine(fetchJson: (path: string) => Promise<unknown>): Promise<EngineChoice> {
  const answer = await fetchJson("/speech/models").catch(() => null);
  const model = parseOffer(answer);
  return model === null ? { kind: "embedded" } : { kind: "vosk", modelUrl: model.url };
}

function parseOffer(answer: unknown): OfferedModel | null {
  if (typeof answer !== "object" || answer === null || !("models" in answer) || !Array.isArray(answer.models))
    return null;
  const models: readonly unknown[] = answer.models;
  return models.find(isVosk) ?? null;
}

function isVosk(model: unknown): model is OfferedModel {
  return (
    typeof model === "object" &&
    model !== null &&
    "kind" in model &&
    model.kind === "vosk" &&
    "url" in model &&
    typeof model.url === "string" &&
    model.url.startsWith("/speech/models/")
  );
}
