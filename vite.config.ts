import { preact } from "@preact/preset-vite";
import { defineConfig } from "vite";
import { firstLoadBudget } from "./tools/first-load-budget.ts";
import { isWantedAtOnce } from "./tools/wanted-at-once.ts";
import { nativeBlob } from "./tools/native-blob.ts";

/** DESIGN figure: the script that the page needs before it shows anything, compressed. */
const firstLoadBytes = 120_000;

export default defineConfig({
  root: "client",
  base: "/",
  plugins: [preact(), nativeBlob(), firstLoadBudget(firstLoadBytes)],
  worker: { format: "es", plugins: () => [nativeBlob()] },
  build: {
    outDir: "../dist/client",
    emptyOutDir: true,
    target: "es2022",
    // The page's security policy allows no inline script, and no data: address where a file will do.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: ["client/index.html", "client/vosk-frame.html"],
      // What is wanted at once comes in one piece, and so do the units: they weigh less than in ten.
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            { name: "units", test: /\/core\/units\/|\/fraction\.js\// },
            { name: (id, modules) => (isWantedAtOnce(id, modules) ? "page" : null) },
          ],
        },
      },
    },
  },
});
