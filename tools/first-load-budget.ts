import { gzipSync } from "node:zlib";
import type { Plugin, Rollup } from "vite";

/**
 * Fails the build when the page's first load outgrows its budget. The first load is the entry and every
 * chunk that it imports statically; what is imported lazily, workers and styles do not count.
 * @param bytes the most that these chunks may weigh together, each compressed by gzip
 */
export function firstLoadBudget(bytes: number): Plugin {
  return {
    name: "first-load-budget",
    apply: "build",
    generateBundle(_, bundle) {
      const weight = firstLoadWeight(bundle);
      if (weight > bytes) {
        this.error(
          `The first load weighs ${weight} bytes compressed, over its budget of ${bytes}. Import something lazily.`,
        );
      }
      this.info(`first load: ${weight} bytes of script, compressed (budget ${bytes})`);
    },
  };
}

/** The page itself; other documents are loaded later, if at all. */
const isPage = (chunk: Rollup.OutputChunk): boolean =>
  chunk.isEntry && (chunk.facadeModuleId?.endsWith("/index.html") ?? false);

function firstLoadWeight(bundle: Rollup.OutputBundle): number {
  const waiting = Object.values(bundle)
    .filter((output) => output.type === "chunk" && isPage(output))
    .map((output) => output.fileName);
  const counted = new Set<string>();
  let weight = 0;
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    const chunk = bundle[name];
    if (counted.has(name) || chunk?.type !== "chunk") continue;
    counted.add(name);
    weight += gzipSync(chunk.code).length;
    waiting.push(...chunk.imports);
  }
  return weight;
}
