/** Where the engine keeps unpacked models in the browser, and how it names their folders there. */
const database = "/vosk";
const store = "FILE_DATA";
const folderOf = (modelUrl: string): string => `${database}/${modelUrl.replace(/\W/g, "_")}`;

/**
 * Takes away every model that the engine has kept in this browser but one. It reads all of them into memory whenever
 * it begins, never forgets one that was replaced, and a bad one would be found again each time. Losing this costs
 * nothing but time, so what goes wrong here is not told.
 * @param modelUrl of the one that stays; null for none
 */
export async function keepOnly(modelUrl: string | null): Promise<void> {
  try {
    const known = await indexedDB.databases();
    if (!known.some(({ name }) => name === database)) return;
    const opened = await answer(indexedDB.open(database));
    try {
      await removeOthers(opened, modelUrl === null ? null : folderOf(modelUrl));
    } finally {
      opened.close();
    }
  } catch {
    // A browser that keeps nothing, or has no such list.
  }
}

async function removeOthers(opened: IDBDatabase, folder: string | null): Promise<void> {
  const files = opened.transaction([store], "readwrite").objectStore(store);
  for (const key of await answer(files.getAllKeys())) {
    const isKept =
      folder !== null && typeof key === "string" && (key === folder || key.startsWith(`${folder}/`));
    if (!isKept) await answer(files.delete(key));
  }
}

function answer<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no reason given"));
  });
}
