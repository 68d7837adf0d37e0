import type { IncomingMessage, ServerResponse } from "node:http";
import type { RequestHandler } from "express";
import helmet from "helmet";

/** A websocket to the same host: older browsers do not count it as 'self'. */
const ownSockets = (request: IncomingMessage, _response: ServerResponse): string =>
  `ws://${request.headers.host ?? "localhost"}`;

const self = "'self'";
const none = "'none'";

const pagePolicy = {
  defaultSrc: [self],
  // WebAssembly is compiled in workers; nothing else is made from text.
  scriptSrc: [self, "'wasm-unsafe-eval'"],
  scriptSrcAttr: [none],
  workerSrc: [self, "blob:"],
  connectSrc: [self, "blob:", "data:", ownSockets],
  mediaSrc: [self, "blob:", "data:"],
  styleSrc: [self],
  imgSrc: [self, "data:"],
  fontSrc: [self],
  objectSrc: [none],
  baseUri: [none],
  formAction: [self],
  frameSrc: [self],
  frameAncestors: [none],
};

/** The frame of the Vosk engine, which makes code from text and a worker from a blob. It can do nothing else. */
const voskFramePath = "/vosk-frame.html";
const voskPolicy = {
  defaultSrc: [none],
  scriptSrc: [self, "'unsafe-eval'", "'wasm-unsafe-eval'"],
  workerSrc: [self, "blob:"],
  connectSrc: [self, "blob:", "data:"],
  baseUri: [none],
  formAction: [none],
  frameAncestors: [self],
};

const permissions =
  "microphone=(self), screen-wake-lock=(self), camera=(), geolocation=(), payment=(), usb=()";

/** What the browser is told about every answer: where things may come from, and that only we hear the microphone. */
export function securityHeaders(): RequestHandler {
  const page = protection(pagePolicy, "deny");
  const voskFrame = protection(voskPolicy, "sameorigin");
  return (request, response, next) => {
    response.setHeader("Permissions-Policy", permissions);
    (request.path === voskFramePath ? voskFrame : page)(request, response, next);
  };
}

function protection(
  directives: typeof pagePolicy | typeof voskPolicy,
  framing: "deny" | "sameorigin",
): RequestHandler {
  return helmet({
    contentSecurityPolicy: { useDefaults: false, directives },
    frameguard: { action: framing },
    // Nothing comes from elsewhere, so the page can be alone in its process: then networks may use several cores.
    crossOriginEmbedderPolicy: true,
    referrerPolicy: { policy: "no-referrer" },
    // Plain http on this machine only: a rule for https would lock the page out.
    strictTransportSecurity: false,
  });
}
