import type { ModelLoading } from "../../voice/engine.ts";
import { loadedShare, loadingWords } from "./ear-words.ts";

/** How far a speech model is: a bar that fills while it is fetched and wanders while it is unpacked. */
export function ModelBar({ loading }: { readonly loading: ModelLoading }) {
  const share = loadedShare(loading);
  const words = loadingWords(loading);
  return (
    <span class="model-loading">
      {/* The bar says its share by itself; a changing label would be read aloud at every step. */}
      {share === null ? (
        <progress aria-label="Speech model" />
      ) : (
        <progress aria-label="Speech model" max={1} value={share} />
      )}
      <span>{words}</span>
    </span>
  );
}
