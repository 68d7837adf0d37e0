import type { IncomingMessage, ServerResponse } from "node:http";
import type { RequestHandler } from "express";
import helmet from "helmet";

/** The one page that may embed an engine that needs `eval`; it is framed by our own page and by nobody else. */
export const enginePage = "/engine.html";

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

const enginePolicy = {
  ...pagePolicy,
  scriptSrc: [self, "'wasm-unsafe-eval'", "'unsafe-eval'"],
  frameAncestors: [self],
};

function headers(policy: typeof pagePolicy, framed: "sameorigin" | "deny"): RequestHandler {
  return helmet({
    contentSecurityPolicy: { useDefaults: false, directives: policy },
    frameguard: { action: framed },
    referrerPolicy: { policy: "no-referrer" },
    // Plain http on this machine only: a rule for https would lock the page out.
    strictTransportSecurity: false,
  });
}

/** What the browser is told about every answer: where things may come from, and that only we hear the microphone. */
export function securityHeaders(): RequestHandler {
  const page = headers(pagePolicy, "deny");
  const engine = headers(enginePolicy, "sameorigin");
  return (request, response, next) => {
    response.setHeader(
      "Permissions-Policy",
      "microphone=(self), screen-wake-lock=(self), camera=(), geolocation=(), payment=(), usb=()",
    );
    const handler = request.path === enginePage ? engine : page;
    handler(request, response, next);
  };
}
