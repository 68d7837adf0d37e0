import type { Plugin } from "vite";

const bare = "blob-polyfill";
const resolved = `\0${bare}`;

/**
 * Gives the recogniser the browser's own Blob. Its web build imports a polyfill by a bare name, 20 kB for
 * browsers that have no AudioWorklet either; left unresolved, a worker dies of it with an empty error.
 */
export function nativeBlob(): Plugin {
  return {
    name: "native-blob",
    enforce: "pre",
    resolveId: (source) => (source === bare ? resolved : null),
    load: (id) => (id === resolved ? "export const Blob = globalThis.Blob;" : null),
  };
}
