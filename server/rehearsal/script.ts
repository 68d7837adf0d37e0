import { minutes, seconds, type Seconds } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";

/** When a line comes: at once, so long after the line before, or at a time of the evening (minutes from midnight). */
export type When =
  | { readonly kind: "at-once" }
  | { readonly kind: "after"; readonly wait: Seconds }
  | { readonly kind: "at"; readonly minute: number };

/** How far the obliging cook goes, doing what is called in the time that the recipe says. */
export type Goal =
  | { readonly kind: "minute"; readonly minute: number }
  /** A ring of the timer whose name holds these words; null: of any. */
  | { readonly kind: "ring"; readonly of: string | null }
  | { readonly kind: "table" };

/** What one line makes the cook do. */
export type Deed =
  | { readonly kind: "say"; readonly words: string }
  /** A recording, its path as the script names it. */
  | { readonly kind: "hear"; readonly file: string }
  | { readonly kind: "pass" }
  | { readonly kind: "wait-for-ring"; readonly of: string | null }
  | { readonly kind: "wait-for-call" }
  | { readonly kind: "cook"; readonly until: Goal };

export interface ScriptLine {
  /** Counted from 1. */
  readonly number: number;
  readonly when: When;
  readonly deed: Deed;
}

const clock = /^([01]?\d|2[0-3]):([0-5]\d)$/;

/** "17:05" as minutes from midnight; null for anything else. */
export function readMinute(text: string): number | null {
  const match = clock.exec(text);
  return match === null ? null : Number(match[1]) * 60 + Number(match[2]);
}

const timed = /^(?:(\d{1,2}:\d{2})|\+\s*(\d{1,4})\s*(min|s))(?:\s+(.*))?$/;
const quoted = /^"([^"]+)"$/;

function readWhen(text: string): { readonly when: When; readonly rest: string } | null {
  const match = timed.exec(text);
  if (match === null) return { when: { kind: "at-once" }, rest: text };
  const [, at, count, unit, rest = ""] = match;
  if (at === undefined) {
    const wait = unit === "min" ? minutes(Number(count)) : seconds(Number(count));
    return { when: { kind: "after", wait }, rest };
  }
  const minute = readMinute(at);
  return minute === null ? null : { when: { kind: "at", minute }, rest };
}

function readGoal(text: string): Goal | null {
  if (text === "to the table") return { kind: "table" };
  const ring = /^until ring(?:\s+(.+))?$/.exec(text);
  if (ring !== null) return { kind: "ring", of: ring[1] ?? null };
  const minute = readMinute(text.replace(/^until\s+/, ""));
  return minute === null || !text.startsWith("until ") ? null : { kind: "minute", minute };
}

function readWait(text: string): Deed | null {
  if (text === "for call") return { kind: "wait-for-call" };
  const ring = /^for ring(?:\s+(.+))?$/.exec(text);
  return ring === null ? null : { kind: "wait-for-ring", of: ring[1] ?? null };
}

function readDeed(text: string): Deed | null {
  if (text === "") return { kind: "pass" };
  const [first = ""] = text.split(/\s+/, 1);
  const rest = text.slice(first.length).trim();
  switch (first) {
    case "hear":
      return rest === "" ? null : { kind: "hear", file: rest };
    case "wait":
      return readWait(rest);
    case "cook": {
      const until = readGoal(rest);
      return until === null ? null : { kind: "cook", until };
    }
    default:
      return { kind: "say", words: quoted.exec(text)?.[1] ?? text };
  }
}

function readLine(text: string, number: number): Result<ScriptLine, string> {
  const wrong = (what: string) => err(`Line ${number} of the script, "${text}": ${what}`);
  const until = /^until\s+(\S+)$/.exec(text);
  if (until !== null) {
    const minute = readMinute(until[1] ?? "");
    if (minute === null) return wrong("write a time of day like 17:40 after until.");
    return ok({ number, when: { kind: "at", minute }, deed: { kind: "pass" } });
  }
  const read = readWhen(text);
  if (read === null) return wrong("there is no such time of day; write it like 17:40.");
  const deed = readDeed(read.rest.trim());
  if (deed !== null) return ok({ number, when: read.when, deed });
  return wrong(
    "write hear FILE, wait for ring, wait for call, cook until 17:40, cook until ring or cook to the table; put words that are spoken in quotes.",
  );
}

/**
 * Reads a rehearsal script: a line a deed, # begins a comment. docs/rehearsal.md explains the notation.
 * Error: one sentence with the line's number.
 */
export function readScript(text: string): Result<readonly ScriptLine[], string> {
  const lines: ScriptLine[] = [];
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    const bare = raw.replace(/(^|\s)#.*$/, "").trim();
    if (bare === "") continue;
    const line = readLine(bare, index + 1);
    if (!line.ok) return line;
    lines.push(line.value);
  }
  return lines.length > 0 ? ok(lines) : err("The script has no line that does anything.");
}
