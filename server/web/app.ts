import express, { type ErrorRequestHandler, type Express, type RequestHandler, type Router } from "express";
import type { Pantry } from "../../core/sync/protocol.ts";
import { isOwnHost } from "./own-host.ts";
import { pageFiles } from "./page-files.ts";
import { securityHeaders } from "./security-headers.ts";
import { speechFiles } from "./speech-files.ts";

/** What the pages are served from. */
export interface AppParts {
  readonly pantry: () => Promise<Pantry>;
  readonly voice: Router;
  readonly calendar: Router;
  readonly buying: Router;
  readonly meal: Router;
  readonly foods: Router;
  /** The built page: dist/client. */
  readonly pageFolder: string;
  readonly modelsFolder: string;
  /** Is told what was thrown by a bug of ours. */
  readonly report: (problem: unknown) => void;
}

const onlyOwnHost: RequestHandler = (request, response, next) => {
  if (isOwnHost(request.headers.host)) next();
  else
    response
      .status(421)
      .type("text/plain")
      .send("Stovecall answers on this machine only. Open the address that it printed.");
};

/** A request that cannot be read (a broken address) is the sender's; everything else is ours and is reported. */
function lastResort(report: AppParts["report"]): ErrorRequestHandler {
  return (problem: unknown, _request, response, next) => {
    if (response.headersSent) {
      next(problem);
      return;
    }
    const status = problem instanceof Error && "status" in problem ? Number(problem.status) : 500;
    const isTheirs = status >= 400 && status < 500;
    if (!isTheirs) report(problem);
    const error = isTheirs
      ? "That address cannot be read."
      : "Something went wrong in the server. Try again.";
    response.status(isTheirs ? status : 500).json({ error });
  };
}

/** Everything that is answered over plain HTTP; the sockets are joined to the same server beside it. */
export function createApp(parts: AppParts): Express {
  const app = express();
  app.disable("x-powered-by");
  app.set("etag", false);
  app.use(onlyOwnHost, securityHeaders());
  app.get("/api/health", (_request, response) => {
    response.set("Cache-Control", "no-store").json({ ok: true });
  });
  app.get("/api/meals", async (_request, response) => {
    response.set("Cache-Control", "no-store").json(await parts.pantry());
  });
  app.use(speechFiles(parts.modelsFolder), parts.voice, parts.calendar);
  app.use(parts.buying, parts.meal, parts.foods);
  app.use(pageFiles(parts.pageFolder));
  app.use((_request, response) => {
    response.status(404).json({ error: "There is nothing at this address." });
  });
  app.use(lastResort(parts.report));
  return app;
}
