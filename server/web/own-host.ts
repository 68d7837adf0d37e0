import type { IncomingMessage } from "node:http";

/** The names under which this machine knows itself; a page that reaches us under another name is an attack. */
const ownNames: ReadonlySet<string> = new Set(["localhost", "127.0.0.1", "[::1]"]);

/**
 * Whether a Host header names this very machine. A foreign name that resolves to 127.0.0.1 (DNS rebinding) does not.
 * @param host "name" or "name:port"; undefined where the header is missing
 */
export function isOwnHost(host: string | undefined): boolean {
  const match = /^(\[[0-9a-f:]+\]|[^:[\]]+)(?::\d{1,5})?$/i.exec(host ?? "");
  return match?.[1] !== undefined && ownNames.has(match[1].toLowerCase());
}

/**
 * Whether a request comes from our own page, or from no page at all: a program on this machine sends no Origin.
 * `cors` would not do: a browser opens a websocket to anywhere and leaves the check to the server.
 */
export function isOwnPage({ headers }: Pick<IncomingMessage, "headers">): boolean {
  if (!isOwnHost(headers.host)) return false;
  const site = headers["sec-fetch-site"];
  if (site !== undefined && site !== "same-origin" && site !== "none") return false;
  if (headers.origin === undefined) return true;
  return headers.origin === `http://${headers.host ?? ""}`;
}
