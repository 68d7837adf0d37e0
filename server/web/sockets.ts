import type { Server as HttpServer } from "node:http";
import { Server, type Socket } from "socket.io";
import { parseOrder } from "../../core/cook/parse.ts";
import { parseHouseOrder } from "../../core/house/parse.ts";
import {
  beginMessage,
  houseOrderMessage,
  orderMessage,
  type Acknowledged,
  type Appended,
  type Begun,
  type HouseAppended,
  type HouseSnapshot,
  type Snapshot,
} from "../../core/sync/protocol.ts";
import type { Household } from "../kitchen/household.ts";
import type { Kitchen } from "../kitchen/kitchen.ts";
import { isOwnPage } from "./own-host.ts";
import { rateLimit } from "./rate-limit.ts";

/** Commands a second that one device may give: a cook says one, a stuck page says thousands. */
const commandsPerSecond = 20;
const largestMessageBytes = 64 * 1024;

interface ToDevice {
  readonly snapshot: (snapshot: Snapshot) => void;
  readonly events: (appended: Appended) => void;
  readonly "house-events": (appended: HouseAppended) => void;
}
type FromDevice = Record<string, (...payload: readonly unknown[]) => void>;
type Devices = Server<FromDevice, ToDevice>;
type Refused = { readonly ok: false; readonly sentence: string };

const refused = (sentence: string): Refused => ({ ok: false, sentence });
const unreadable = refused("The server could not read that command; nothing was recorded. Reload the page.");
const tooMany = refused(
  "Too many commands at once; this one was not recorded. Wait a second, then say it again.",
);
const broken = refused(
  "Something went wrong in the server; nothing was recorded. Say it again, or start Stovecall again.",
);

function order(kitchen: Kitchen, payload: unknown): Acknowledged {
  const message = orderMessage.safeParse(payload);
  if (!message.success) return unreadable;
  // A meal comes from the recipe files, never from a device.
  const parsed = message.data.order.type === "BeginMeal" ? null : parseOrder(message.data.order);
  if (parsed === null) return unreadable;
  return parsed.ok ? kitchen.order({ ...message.data, order: parsed.value }) : refused(parsed.error);
}

function houseOrder(household: Household, payload: unknown): Acknowledged {
  const message = houseOrderMessage.safeParse(payload);
  if (!message.success) return unreadable;
  // What a meal is made of comes from the recipe files, never from a device.
  const parsed = message.data.order.type === "NoteMeal" ? null : parseHouseOrder(message.data.order);
  if (parsed === null) return unreadable;
  return parsed.ok ? household.order({ ...message.data, order: parsed.value }) : refused(parsed.error);
}

function begin(kitchen: Kitchen, payload: unknown): Begun {
  const message = beginMessage.safeParse(payload);
  return message.success ? kitchen.begin(message.data) : unreadable;
}

type Reply = (answer: Acknowledged | Begun | HouseSnapshot) => void;

/** What devices are joined to. */
interface Joined {
  readonly kitchen: Kitchen;
  readonly household: Household;
}

/** Answers one device's commands, and never more of them than it may give. */
function serve(
  socket: Socket<FromDevice, ToDevice>,
  { kitchen, household }: Joined,
  report: (problem: unknown) => void,
): void {
  const mayPass = rateLimit(commandsPerSecond);
  const answerWith =
    (carryOut: (payload: unknown) => Acknowledged | Begun | HouseSnapshot) =>
    (payload: unknown, acknowledge: unknown): void => {
      const reply = typeof acknowledge === "function" ? (acknowledge as Reply) : null;
      try {
        const answer = mayPass(Date.now()) ? carryOut(payload) : tooMany;
        reply?.(answer);
      } catch (problem) {
        report(problem);
        reply?.(broken);
      }
    };
  socket.on(
    "order",
    answerWith((payload) => order(kitchen, payload)),
  );
  socket.on(
    "begin",
    answerWith((payload) => begin(kitchen, payload)),
  );
  socket.on(
    "house-order",
    answerWith((payload) => houseOrder(household, payload)),
  );
  socket.on(
    "house",
    answerWith(() => household.snapshot()),
  );
  socket.emit("snapshot", kitchen.snapshot());
}

/**
 * Joins devices to the kitchen and the house. Every device gets the whole log on every connect: Socket.IO's own recovery fails
 * after a restart of the server and before the first event. A silent loss is found in 9 s.
 * @param report is told what was thrown by a bug of ours
 */
export function attachSockets(
  http: HttpServer,
  { kitchen, household }: Joined,
  report: (problem: unknown) => void,
): Devices {
  const devices: Devices = new Server(http, {
    serveClient: false,
    maxHttpBufferSize: largestMessageBytes,
    pingInterval: 5000,
    pingTimeout: 4000,
    allowRequest: (request, decide) => decide(null, isOwnPage(request)),
  });
  devices.on("connection", (socket) => serve(socket, { kitchen, household }, report));
  kitchen.listen((announcement) => {
    if (announcement.type === "events") devices.emit("events", announcement.appended);
    else devices.emit("snapshot", announcement.snapshot);
  });
  household.listen((appended) => devices.emit("house-events", appended));
  return devices;
}
