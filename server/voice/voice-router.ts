import { createHash } from "node:crypto";
import { Router, type Request, type Response } from "express";
import { z } from "zod";
import type { Voice } from "./create-voice.ts";
import { rateLimits, speechJob, voiceNames } from "./speech-request.ts";

const querySchema = z.strictObject({
  text: z.string("The request has no text; add ?text= and what is to be said."),
  voice: z.enum(voiceNames, `There is no such voice; choose one of ${voiceNames.join(", ")}.`).default("slt"),
  rate: z.coerce
    .number("The rate is not a number; 1 is the voice's own pace.")
    .min(rateLimits.slowest, `The rate is too small; the slowest is ${rateLimits.slowest}.`)
    .max(rateLimits.fastest, `The rate is too large; the fastest is ${rateLimits.fastest}.`)
    .default(1),
});

/** 400 for a text that can never be spoken; 503, which may be tried again, for a voice in trouble. */
function refuse(response: Response, status: 400 | 503, error: string): void {
  response.status(status).set("Cache-Control", "no-store").json({ error });
}

function firstSentence(error: z.ZodError): string {
  const issue = error.issues[0];
  if (issue?.code !== "unrecognized_keys") return issue?.message ?? "The request cannot be read.";
  return `The request has a field that the voice does not know: ${issue.keys.join(", ").slice(0, 60)}; leave it out.`;
}

/**
 * A page that fetches ahead says `Priority: u=4` to `u=7`, less urgent than the default 3; it is a header and no part
 * of the address, so that both kinds of request share one entry in the browser's cache.
 * Source: RFC 9218, section 4.1.
 */
function urgencyOf(request: Request): "now" | "ahead" {
  return /(^|[,\s])u=[4-7]/.test(request.get("priority") ?? "") ? "ahead" : "now";
}

async function answer(voice: Voice, request: Request, response: Response): Promise<void> {
  const query = querySchema.safeParse(request.query);
  if (!query.success) {
    refuse(response, 400, firstSentence(query.error));
    return;
  }
  const { text, voice: name, rate } = query.data;
  const job = speechJob(text, { voice: name, rate });
  if (!job.ok) {
    refuse(response, 400, job.error);
    return;
  }
  const spoken = await voice.speak(text, { voice: name, rate, urgency: urgencyOf(request) });
  if (!spoken.ok) {
    refuse(response, 503, spoken.error);
    return;
  }
  // The same words always give the same sound, so a browser that has it need never ask again.
  response
    .set("Cache-Control", "private, max-age=31536000, immutable")
    .set("ETag", `"${createHash("sha256").update(spoken.value).digest("base64url").slice(0, 22)}"`)
    .type("audio/wav");
  // `fresh` compares the ETag that the browser sent with the one just set.
  if (request.fresh) response.status(304).end();
  else response.send(Buffer.from(spoken.value.buffer, spoken.value.byteOffset, spoken.value.byteLength));
}

/** GET /voice?text=…&voice=slt&rate=1 : the sentence as audio/wav, or `{ error }` with one sentence. */
export function voiceRouter(voice: Voice): Router {
  const router = Router();
  router.get("/voice", (request, response, next) => {
    answer(voice, request, response).catch(next);
  });
  return router;
}
