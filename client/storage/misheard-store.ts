import { mostKept } from "../../core/speech/misheard/limits.ts";
import type { Misheard } from "../../core/speech/misheard/misheard.ts";
import { parseMisheard } from "../../core/speech/misheard/parse-misheard.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/**
 * Where this browser keeps misheard sentences: two tables of one database, so that a list is read without its sound.
 * Every call fails with one sentence.
 */
export interface MisheardStore {
  /** The oldest first. Rows that are none are deleted. */
  readonly list: () => Promise<Result<readonly Misheard[], string>>;
  /** Adds a sentence with its sound (a WAV file), and deletes the oldest beyond a hundred. */
  readonly add: (misheard: Misheard, wav: Uint8Array) => Promise<Result<null, string>>;
  readonly change: (misheard: Misheard) => Promise<Result<null, string>>;
  /** A WAV file. */
  readonly sound: (id: string) => Promise<Result<Uint8Array, string>>;
  /** Deletes one, or all (null). */
  readonly remove: (id: string | null) => Promise<Result<null, string>>;
}

const database = "stovecall.misheard";
const tables = ["sentences", "sounds"] as const;

type Tables = { readonly sentences: IDBObjectStore; readonly sounds: IDBObjectStore };

/** This browser's own. The database is made when the first sentence is kept: who keeps none has none. */
export function browserMisheardStore(): MisheardStore {
  return {
    list: () => inStore("readwrite", listAll, { answer: [] }),
    add: (misheard, wav) => inStore("readwrite", (stores) => addOne(stores, misheard, wav), "make"),
    change: (misheard) =>
      inStore("readwrite", ({ sentences }) => changeOne(sentences, misheard), { answer: null }),
    sound: async (id) => {
      const found = await inStore("readonly", ({ sounds }) => settled<unknown>(sounds.get(id)), {
        answer: null,
      });
      if (!found.ok) return found;
      return found.value instanceof Uint8Array
        ? ok(found.value)
        : err("The sound of this sentence is gone. Delete the sentence.");
    },
    remove: (id) => inStore("readwrite", (stores) => removeFrom(stores, id), { answer: null }),
  };
}

async function listAll({ sentences, sounds }: Tables): Promise<readonly Misheard[]> {
  const keys = await settled(sentences.getAllKeys());
  const rows = (await settled<unknown[]>(sentences.getAll())).map(parseMisheard);
  for (const [at, key] of keys.entries()) {
    if (rows[at] !== null) continue;
    await settled<undefined>(sentences.delete(key));
    await settled<undefined>(sounds.delete(key));
  }
  return rows.filter((row) => row !== null).toSorted((a, b) => a.at - b.at);
}

async function addOne(stores: Tables, misheard: Misheard, wav: Uint8Array): Promise<null> {
  await settled(stores.sentences.put(misheard));
  await settled(stores.sounds.put(wav, misheard.id));
  const all = await listAll(stores);
  for (const { id } of all.slice(0, Math.max(0, all.length - mostKept))) await removeFrom(stores, id);
  return null;
}

async function removeFrom(stores: Tables, id: string | null): Promise<null> {
  for (const name of tables)
    await settled<undefined>(id === null ? stores[name].clear() : stores[name].delete(id));
  return null;
}

/** What was deleted in another window meanwhile stays deleted. */
async function changeOne(sentences: IDBObjectStore, misheard: Misheard): Promise<null> {
  if ((await settled(sentences.count(misheard.id))) > 0) await settled(sentences.put(misheard));
  return null;
}

/**
 * Does some work in one transaction, all of it or none.
 * @param ifNone the answer where there is no database; or it is made
 */
async function inStore<T>(
  mode: IDBTransactionMode,
  work: (stores: Tables) => Promise<T>,
  ifNone: { readonly answer: T } | "make",
): Promise<Result<T, string>> {
  let opened: IDBDatabase | null = null;
  let transaction: IDBTransaction | null = null;
  try {
    opened = await openDatabase(ifNone === "make" ? "make" : "if-there");
    if (opened === null && ifNone !== "make") return ok(ifNone.answer);
    if (opened === null) throw new Error("it was not made");
    transaction = opened.transaction(tables, mode);
    const ended = endOf(transaction);
    const [value] = await Promise.all([
      work({ sentences: transaction.objectStore("sentences"), sounds: transaction.objectStore("sounds") }),
      ended,
    ]);
    return ok(value);
  } catch (thrown) {
    const sentence = faultOf(transaction?.error ?? thrown);
    // What was done before the fault is not to stay by itself.
    abort(transaction);
    return err(sentence);
  } finally {
    opened?.close();
  }
}

/** Null where it is not there and is not to be made. */
function openDatabase(how: "make" | "if-there"): Promise<IDBDatabase | null> {
  const request = indexedDB.open(database, 1);
  let isNone = false;
  request.onupgradeneeded = () => {
    if (how === "if-there") {
      isNone = true;
      request.transaction?.abort();
      return;
    }
    request.result.createObjectStore("sentences", { keyPath: "id" });
    request.result.createObjectStore("sounds");
  };
  return new Promise((resolve, reject) => {
    request.onblocked = () => reject(new Error("another window holds it"));
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => (isNone ? resolve(null) : reject(reasonOf(request.error)));
  });
}

function abort(transaction: IDBTransaction | null): void {
  try {
    transaction?.abort();
  } catch {
    // It has ended by itself.
  }
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(reasonOf(request.error));
  });
}

function endOf(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(reasonOf(transaction.error));
  });
}

const reasonOf = (error: DOMException | null): Error => error ?? new Error("it was broken off");

function faultOf(thrown: unknown): string {
  const name = thrown instanceof Error ? thrown.name : "";
  switch (name) {
    case "QuotaExceededError":
      return "The browser has no room left for misheard sentences. Delete some of them in the drawer.";
    case "SecurityError":
    case "InvalidStateError":
    case "ReferenceError":
      return "This browser keeps nothing for this page, so misheard sentences cannot be kept. Allow it to, or use another window.";
    default: {
      const detail = thrown instanceof Error ? thrown.message : String(thrown);
      return `The misheard sentences cannot be reached (${detail.replace(/\.$/, "")}). Listening goes on without them.`;
    }
  }
}
