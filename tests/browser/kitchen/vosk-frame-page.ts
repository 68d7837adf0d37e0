import type { Browser, Page } from "playwright-core";
import type { FromEngine } from "../../../client/voice/engine.ts";
import type { Phrase } from "../../../core/speech/grammar.ts";
import type { ToRecogniser } from "../../../core/speech/recogniser-messages.ts";

/** What a burst of sound is made of; the whistle model hears "okay", "kitchen" and nothing in the first three. */
export type Burst = readonly [kind: "low" | "high" | "quiet", ms: number];

type Word = { readonly word: string; readonly start: number };

/** What the library was told in this page, and what it holds. */
export interface Held {
  readonly made: number;
  readonly removed: number;
  /** The list of words of each recogniser made. */
  readonly lists: readonly string[];
  /** Bytes of the engine's memory, which never shrinks. */
  readonly engineBytes: number;
  /** Bytes of the page's own objects, after everything unused has been collected. */
  readonly pageBytes: number;
  /** What the engine has told to the end: each word, and when it began in the engine's own count (seconds). */
  readonly finals: readonly (readonly Word[])[];
}

type Watching = {
  frameSays: FromEngine[];
  framePort: MessagePort;
  watched: { made: number; removed: number; lists: string[]; finals: Word[][]; workers: Worker[] };
};

type Pace = "at once" | "as it sounds";
type Heard = Extract<FromEngine, { kind: "heard" }>;

type Told = {
  readonly event: string;
  readonly result: { readonly result?: readonly Word[] };
};

/** The Vosk engine's frame as a page of its own, with its port in the test's hand. */
export class VoskFramePage {
  readonly page: Page;

  private constructor(page: Page) {
    this.page = page;
  }

  static async open(browser: Browser, serverUrl: string): Promise<VoskFramePage> {
    const page = await (await browser.newContext()).newPage();
    await page.addInitScript(watchLibrary);
    await page.goto(new URL("/vosk-frame.html", serverUrl).href);
    return new VoskFramePage(page);
  }

  /** Loads a model; the last message says how it went. */
  async load(modelUrl: string): Promise<readonly FromEngine[]> {
    await this.page.evaluate((base) => {
      const { port1, port2 } = new MessageChannel();
      (globalThis as unknown as Watching).frameSays = [];
      (globalThis as unknown as Watching).framePort = port1;
      port1.onmessage = (event: MessageEvent<FromEngine>) =>
        (globalThis as unknown as Watching).frameSays.push(event.data);
      window.postMessage("listen", location.origin, [port2]);
      port1.postMessage({ kind: "load", base } satisfies ToRecogniser);
    }, modelUrl);
    await this.page.waitForFunction(() =>
      (globalThis as unknown as Watching).frameSays.some(
        ({ kind }) => kind === "loaded" || kind === "failed",
      ),
    );
    return this.page.evaluate(() => (globalThis as unknown as Watching).frameSays);
  }

  /** From now on these sentences are listened for, after the address or, without one, at any time. */
  async listenFor(sentences: readonly string[], called: string | null = null): Promise<void> {
    await this.page.evaluate(
      ([texts, address]) => {
        const of = texts.map((text) => ({ kind: "words" as const, text }));
        const top: Phrase = { kind: "choice", of };
        const change = { root: "top", names: ["top"], changed: new Map([["top", top]]) };
        (globalThis as unknown as Watching).framePort.postMessage({
          kind: "grammar",
          change,
        } satisfies ToRecogniser);
        const mode = address === null ? "open" : "addressed";
        const how = { address, mode, stopSentences: [] } as const;
        (globalThis as unknown as Watching).framePort.postMessage({
          kind: "listen-for",
          how,
          when: "after-utterance",
        } satisfies ToRecogniser);
      },
      [sentences, called] as const,
    );
  }

  /** Plays bursts, faster than they would sound, and waits for what was heard. At most 7 s of them at a time. */
  say(...bursts: readonly Burst[]): Promise<Heard> {
    return this.play("at once", bursts);
  }

  /** The same in the time that it takes, so that the engine's partial words come as they do in a kitchen. */
  saySlowly(...bursts: readonly Burst[]): Promise<Heard> {
    return this.play("as it sounds", bursts);
  }

  private async play(pace: Pace, bursts: readonly Burst[]): Promise<Heard> {
    const before = await this.page.evaluate(playBursts, [pace, bursts] as const);
    await this.page.waitForFunction(
      (count) =>
        (globalThis as unknown as Watching).frameSays.filter(({ kind }) => kind === "heard").length > count,
      before,
    );
    const heard = await this.page.evaluate(() =>
      (globalThis as unknown as Watching).frameSays.findLast((one) => one.kind === "heard"),
    );
    if (heard === undefined) throw new Error("nothing was heard");
    return heard;
  }

  /** Resolves when the engine has done everything that it was told. */
  async held(): Promise<Held> {
    const engine = await this.page.evaluate(async () => {
      const { watched, frameSays } = globalThis as unknown as Watching;
      const { workers, ...counts } = watched;
      const sizes = workers.map(
        (worker) =>
          new Promise<number>((resolve) => {
            worker.addEventListener("message", ({ data }: MessageEvent<{ size?: number } | null>) => {
              if (data?.size !== undefined) resolve(data.size);
            });
            worker.postMessage({ action: "size" });
          }),
      );
      const engineBytes = Math.max(...(await Promise.all(sizes)));
      // What the test itself has gathered is no leak of the engine.
      frameSays.length = 0;
      const told = { ...counts, finals: [...counts.finals], lists: [...counts.lists] };
      watched.finals.length = watched.lists.length = 0;
      return { ...told, engineBytes };
    });
    const session = await this.page.context().newCDPSession(this.page);
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    await session.detach();
    return { ...engine, pageBytes: usedSize };
  }

  /** The files that the engine has kept in this browser. */
  async kept(): Promise<readonly string[]> {
    return this.page.evaluate(async () => {
      const ask = <T>(request: IDBRequest<T>): Promise<T> =>
        new Promise((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error ?? new Error("no answer"));
        });
      const database = await ask(indexedDB.open("/vosk"));
      const keys = await ask(database.transaction(["FILE_DATA"]).objectStore("FILE_DATA").getAllKeys());
      database.close();
      return keys.map(String);
    });
  }

  /** Gives the page back. */
  close(): Promise<void> {
    return this.page.context().close();
  }
}

/** Runs in the page before its own scripts: counts what the library is told, and lets its worker tell its memory. */
function watchLibrary(): void {
  const watched: Watching["watched"] = { made: 0, removed: 0, lists: [], finals: [], workers: [] };
  (globalThis as unknown as Watching).watched = watched;
  const plain = URL.createObjectURL.bind(URL);
  const tellSize = `
    const plainInstantiate = WebAssembly.instantiate;
    let memory = null;
    WebAssembly.instantiate = async (...given) => {
      const made = await plainInstantiate(...given);
      memory = Object.values((made.instance ?? made).exports).find((one) => one instanceof WebAssembly.Memory);
      return made;
    };
    self.addEventListener("message", (event) => {
      if (event.data?.action !== "size") return;
      event.stopImmediatePropagation();
      self.postMessage({ event: "size", size: memory.buffer.byteLength });
    });
  `;
  URL.createObjectURL = (made) =>
    plain(made instanceof Blob ? new Blob([tellSize, made], { type: made.type }) : made);
  const PlainWorker = Worker;
  globalThis.Worker = class extends PlainWorker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      watched.workers.push(this);
      this.addEventListener("message", ({ data }: MessageEvent<Told | null>) => {
        const words = data?.event === "result" ? data.result.result : undefined;
        if (words !== undefined) watched.finals.push(words.map(({ word, start }) => ({ word, start })));
      });
    }

    override postMessage(message: unknown, options?: StructuredSerializeOptions | Transferable[]): void {
      const told = message as { readonly action?: string; readonly grammar?: string };
      if (told.action === "create") {
        watched.made++;
        watched.lists.push(told.grammar ?? "");
      }
      if (told.action === "remove") watched.removed++;
      super.postMessage(message, options as StructuredSerializeOptions);
    }
  };
}

/** Runs in the page: plays bursts of hiss, the same each time. @returns how often something was heard before */
async function playBursts([pace, bursts]: readonly [Pace, readonly Burst[]]): Promise<number> {
  const { frameSays, framePort } = globalThis as unknown as Watching;
  const before = frameSays.filter(({ kind }) => kind === "heard").length;
  let seed = 1;
  let last = 0;
  const sounds: Record<Burst[0], (noise: number) => number> = {
    quiet: (noise) => noise * 0.0005,
    // A one-pole filter keeps the low tones, a difference the high ones.
    low: (noise) => (last = 0.9 * last + 0.1 * noise) * 1.2,
    high: (noise) => {
      const sample = (noise - last) * 0.2;
      last = noise;
      return sample;
    },
  };
  const samples: number[] = [];
  for (const [kind, ms] of bursts) {
    for (let left = 16 * ms; left > 0; left--) {
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
      samples.push(sounds[kind](seed / 2 ** 31 - 1));
    }
  }
  for (let at = 0; at < samples.length; at += 640) {
    const block = Float32Array.from(samples.slice(at, at + 640));
    framePort.postMessage({ kind: "audio", samples: block, rate: 16_000 } satisfies ToRecogniser);
    if (pace === "as it sounds") await new Promise((resolve) => setTimeout(resolve, 40));
  }
  return before;
}
