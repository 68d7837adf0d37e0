/** What the build knows of a module. */
interface Modules {
  readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null;
}

let found: ReadonlySet<string> | null = null;

/** All that an entry imports, and what that imports, as far as nothing is imported lazily. */
function wantedBy(entry: string, modules: Modules): ReadonlySet<string> {
  const wanted = new Set<string>();
  const waiting = [new URL(`../client/${entry}`, import.meta.url).pathname];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (wanted.has(id)) continue;
    wanted.add(id);
    waiting.push(...(modules.getModuleInfo(id)?.importedIds ?? []));
  }
  return wanted;
}

/**
 * Whether the page cannot stand without a module: its entry imports it, and not lazily. What the frame of the Vosk
 * recogniser imports too is left out: the frame would have to load, and run, the page with it.
 */
export function isWantedAtOnce(id: string, modules: Modules): boolean {
  if (found === null) {
    const frame = wantedBy("voice/vosk-frame.ts", modules);
    found = new Set([...wantedBy("main.tsx", modules)].filter((one) => !frame.has(one)));
  }
  return found.has(id);
}
