import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect } from "vitest";
import { timerId, type Order } from "../../core/cook/orders.ts";
import { minutes } from "../../core/units/quantity.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { startServer, type RunningServer } from "../../server/web/start-server.ts";
import { Device } from "./device.ts";

/** The recipes that ship. */
export const recipes = join(import.meta.dirname, "..", "..", "recipes");
const book = await MealBook.open(recipes);

type DeviceOptions = ConstructorParameters<typeof Device> extends [string, ...infer Rest] ? Rest : never;

/** A server for each test of a file, over a log of its own, and the devices that join it. */
export class OpenKitchen {
  folder = "";
  readonly #reports: string[] = [];
  #server: RunningServer | null = null;
  #devices: Device[] = [];

  constructor() {
    beforeEach(async () => {
      this.folder = mkdtempSync(join(tmpdir(), "kitchen-"));
      await this.restart(0);
    });
    afterEach(async () => {
      for (const { socket } of this.#devices) socket.close();
      this.#devices = [];
      await this.server.close();
      rmSync(this.folder, { recursive: true, force: true });
      expect(this.#reports.splice(0)).toEqual([]);
    });
  }

  get server(): RunningServer {
    if (this.#server === null) throw new Error("the server has not started");
    return this.#server;
  }

  /** Starts a server, in the place of the one that ran. @param port 0: any free one */
  async restart(port: number): Promise<void> {
    this.#server = await this.start(port);
  }

  /** One more server on the same log. Rejects with the sentence that it ends with. */
  async start(port = 0, dataFolder = this.folder): Promise<RunningServer> {
    const started = await startServer({
      port,
      dataFolder,
      book,
      pageFolder: join(this.folder, "no-page"),
      modelsFolder: join(this.folder, "no-models"),
      tablesFolder: recipes,
      report: (problem) => this.#reports.push(problem),
    });
    if (!started.ok) throw new Error(started.error);
    return started.value;
  }

  /** A device that knocks, and may be turned away. */
  stranger(...options: DeviceOptions): Device {
    const made = new Device(this.server.url, ...options);
    this.#devices.push(made);
    return made;
  }

  /** A device that has joined. */
  async device(...options: DeviceOptions): Promise<Device> {
    const made = this.stranger(...options);
    await made.joined();
    return made;
  }
}

/** Twelve minutes of the cook's own. */
export const timer = (id: string): Order => ({
  type: "StartTimer",
  timer: timerId(id),
  name: id,
  span: { low: minutes(12), high: minutes(12) },
  dish: null,
});

/** How much of the log a device has. */
export const eventCount = (of: Device): number => of.log.events.length;
