/** What the build knows of a module. */
interface Modules {
  readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null;
}

let found: ReadonlySet<string> | null = null;

/** All that the page's entry imports, and what that imports, as far as nothing is imported lazily. */
function wantedBy(entry: string, modules: Modules): ReadonlySet<string> {
  const wanted = new Set<string>();
  const waiting = [entry];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (wanted.has(id)) continue;
    wanted.add(id);
    waiting.push(...(modules.getModuleInfo(id)?.importedIds ?? []));
  }
  return wanted;
}

/** Whether the page cannot stand without a module: the entry imports it, and not lazily. */
export function isWantedAtOnce(id: string, modules: Modules): boolean {
  found ??= wantedBy(new URL("../client/main.tsx", import.meta.url).pathname, modules);
  return found.has(id);
}
