import { preact } from "@preact/preset-vite";
import { defineConfig } from "vite";
import { firstLoadBudget } from "./tools/first-load-budget.ts";
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
      // The units are wanted at once and everywhere: in one piece they weigh less than in four.
      output: { codeSplitting: { groups: [{ name: "units", test: /\/core\/units\// }] } },
    },
  },
});
