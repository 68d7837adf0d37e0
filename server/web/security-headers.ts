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
  frameAncestors: [none],
};

const permissions =
  "microphone=(self), screen-wake-lock=(self), camera=(), geolocation=(), payment=(), usb=()";

/** What the browser is told about every answer: where things may come from, and that only we hear the microphone. */
export function securityHeaders(): RequestHandler {
  const protect = helmet({
    contentSecurityPolicy: { useDefaults: false, directives: pagePolicy },
    frameguard: { action: "deny" },
    referrerPolicy: { policy: "no-referrer" },
    // Plain http on this machine only: a rule for https would lock the page out.
    strictTransportSecurity: false,
  });
  return (request, response, next) => {
    response.setHeader("Permissions-Policy", permissions);
    protect(request, response, next);
  };
}
