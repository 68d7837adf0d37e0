import { Refused } from "./refused.ts";

/** The line broke; what has come may still be used. */
export class Cut extends Error {}

/** What to ask for. */
export interface Request {
  /** Bytes that are here already; 0 for the whole. */
  readonly from: number;
  /** The version they are of, as the server named it; null for the whole. */
  readonly version: string | null;
  /** So long without a byte is a cut. */
  readonly idleMs: number;
  readonly signal: AbortSignal;
}

/** What a server sends. */
export interface Answer {
  /** Where its bytes begin in the file: as asked, or 0. */
  readonly from: number;
  /** Of the whole file; null where it does not say. */
  readonly totalBytes: number | null;
  /** A name of this very content that can be asked for again; null where there is none. */
  readonly version: string | null;
  /** Throws Cut where the line breaks. */
  readonly bytes: AsyncIterable<Uint8Array>;
  readonly close: () => void;
}

const mostRedirects = 5;

/**
 * Asks a server for a file or the rest of one. Only https, or http on this machine; at most five redirects, each under
 * the same rule. Throws Refused with a sentence where there is no such file, Cut where the line breaks.
 * Source of the headers: RFC 9110, sections 13.1.5 (If-Range), 14.2 (Range) and 14.4 (Content-Range).
 */
export async function openAddress(address: URL, request: Request): Promise<Answer> {
  let url = address;
  for (let hop = 0; hop <= mostRedirects; hop++) {
    refuseUnsafe(url, hop > 0);
    const line = new Line(request);
    const response = await line.open(url, headersFor(request));
    const next = response.headers.get("location");
    if (![301, 302, 303, 307, 308].includes(response.status) || next === null)
      return answerOf(response, line, address, request);
    line.close();
    if (!URL.canParse(next, url.href))
      throw new Refused(`${address.href} leads to something that is no address.`);
    url = new URL(next, url);
  }
  throw new Refused(
    `${address.href} leads on and on (${mostRedirects} times). Look for the address of the file itself.`,
  );
}

function refuseUnsafe(url: URL, isRedirect: boolean): void {
  const isHere = /^(?:localhost|127(?:\.\d+){3}|\[::1\])$/.test(url.hostname);
  if (url.protocol === "https:" || (url.protocol === "http:" && isHere)) return;
  const what = isRedirect ? `The address leads on to ${url.origin}, which` : `${url.origin}${url.pathname}`;
  throw new Refused(`${what} is not fetched: only https addresses are, or http on this machine.`);
}

function headersFor({ from, version }: Request): Record<string, string> {
  const usual = { "Accept-Encoding": "identity", "User-Agent": "stovecall" };
  return from === 0 || version === null ? usual : { ...usual, Range: `bytes=${from}-`, "If-Range": version };
}

/** One connection that is given up when nothing comes for a while. */
class Line {
  private readonly breaking = new AbortController();
  private readonly request: Request;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private isIdle = false;

  constructor(request: Request) {
    this.request = request;
  }

  async open(url: URL, headers: Record<string, string>): Promise<Response> {
    const signal = AbortSignal.any([this.breaking.signal, this.request.signal]);
    this.alive();
    try {
      return await fetch(url, { headers, redirect: "manual", signal });
    } catch (problem) {
      throw this.fault(problem);
    }
  }

  async *bytes(response: Response): AsyncGenerator<Uint8Array> {
    try {
      for await (const part of response.body ?? []) {
        this.alive();
        yield part as Uint8Array;
      }
    } catch (problem) {
      throw this.fault(problem);
    } finally {
      this.close();
    }
  }

  close(): void {
    clearTimeout(this.timer);
    this.breaking.abort();
  }

  private alive(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.isIdle = true;
      this.breaking.abort();
    }, this.request.idleMs);
  }

  private fault(problem: unknown): unknown {
    clearTimeout(this.timer);
    if (this.request.signal.aborted) return problem;
    if (this.isIdle) return new Cut("nothing came for a while");
    return problem instanceof TypeError || problem instanceof DOMException ? faultOfLine(problem) : problem;
  }
}

/** `fetch` says "fetch failed" to everything; the reason lies below. */
function faultOfLine(problem: Error): Error {
  const cause: unknown = problem.cause;
  const code = cause instanceof Error && "code" in cause ? String(cause.code) : "";
  switch (code) {
    case "ENOTFOUND":
    case "EAI_AGAIN":
      return new Cut("no such host, or no way to the network");
    case "ECONNREFUSED":
      return new Cut("the host answers nobody at that port");
    default:
      if (/CERT|TLS|SSL|SELF_SIGNED|ERR_TLS/.test(code))
        return new Refused(`The host's certificate is not trusted (${code}), so nothing was fetched.`);
      return new Cut(code === "" ? "the line broke" : `the line broke, ${code}`);
  }
}

function answerOf(response: Response, line: Line, address: URL, request: Request): Answer {
  const { status, headers } = response;
  const place = `${address.origin}${address.pathname}`;
  const length = headers.get("content-length");
  const common = { version: versionOf(headers), bytes: line.bytes(response), close: () => line.close() };
  if (status === 200) return { ...common, from: 0, totalBytes: length === null ? null : Number(length) };
  const range = /^bytes (\d+)-\d+\/(\d+)$/.exec(headers.get("content-range") ?? "");
  if (status === 206 && Number(range?.[1]) === request.from && request.from > 0)
    return { ...common, from: request.from, totalBytes: Number(range?.[2]) };
  line.close();
  const complete = /^bytes \*\/(\d+)$/.exec(headers.get("content-range") ?? "")?.[1];
  if (status === 416 && complete !== undefined && Number(complete) === request.from)
    return {
      ...common,
      version: request.version,
      bytes: nothing(),
      from: request.from,
      totalBytes: request.from,
    };
  switch (status) {
    case 404:
    case 410:
      throw new Refused(`There is nothing at ${place} (answer ${status}). Check the address.`);
    case 401:
    case 403:
      throw new Refused(
        `${place} may not be fetched without leave (answer ${status}). Fetch the file yourself.`,
      );
    default:
      throw status >= 500 || status === 429
        ? new Cut(`the server answered ${status}`)
        : new Refused(`${place} gives no file (answer ${status}). Check the address.`);
  }
}

async function* nothing(): AsyncGenerator<Uint8Array> {
  // Everything has come already.
}

/** A weak tag ("W/…") does not name the very bytes. Source: RFC 9110, section 13.1.5. */
function versionOf(headers: Headers): string | null {
  const tag = headers.get("etag");
  return tag !== null && !tag.startsWith("W/") ? tag : headers.get("last-modified");
}
