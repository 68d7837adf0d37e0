import { describe, expect, it } from "vitest";
import { bigMoments } from "../../../core/plan/big-moments.ts";
import { calendarOf } from "../../../core/plan/calendar.ts";
import { contentLine, textValue } from "../../../core/plan/content-line.ts";
import { instant, minutes, plus } from "../../../core/units/quantity.ts";
import { utcDateTime } from "../../../core/units/utc-date.ts";
import { bakedSheet, mark, evening } from "./calendar-evening.ts";
import { at } from "./small-meals.ts";

const octets = (text: string): number => new TextEncoder().encode(text).length;
const unfolded = (text: string): readonly string[] => text.replaceAll("\r\n ", "").split("\r\n").slice(0, -1);

/** The lines of one component, by what its BEGIN names and what a line of it holds. */
function blocks(text: string, name: string): readonly (readonly string[])[] {
  const found: string[][] = [];
  let depth = 0;
  for (const line of unfolded(text)) {
    if (line === `BEGIN:${name}`) found.push([]);
    if (line === `BEGIN:${name}`) depth += 1;
    if (depth > 0) found.at(-1)?.push(line);
    if (line === `END:${name}`) depth -= 1;
  }
  return found;
}

describe("lines of a calendar file", () => {
  it("[P51] a line of 75 octets stays whole, one of 76 is folded by CRLF and one space", () => {
    // RFC 5545, section 3.1: no longer than 75 octets, excluding the line break; folding inserts CRLF and a white space.
    const whole = `SUMMARY:${"a".repeat(67)}`;
    expect(contentLine("SUMMARY", "a".repeat(67))).toBe(`${whole}\r\n`);
    expect(contentLine("SUMMARY", "a".repeat(68))).toBe(`${whole}\r\n a\r\n`);
  });

  it("[P51] what the RFC folds by hand unfolds to the same line", () => {
    // RFC 5545, section 3.1, the worked example of folding and unfolding.
    const line = "DESCRIPTION:This is a long description that exists on a long line.";
    const folded = "DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n";
    expect(unfolded(folded)).toEqual([line]);
    expect(unfolded(contentLine("DESCRIPTION", line.slice(12)))).toEqual([line]);
  });

  it.each([
    ["é", 2],
    ["€", 3],
    ["🥕", 4],
  ])("[P51] no letter is cut: %s has %i octets in UTF-8", (letter, size) => {
    expect(octets(letter)).toBe(size);
    for (let lead = 0; lead < 80; lead += 1) {
      const value = "x".repeat(lead) + letter.repeat(60);
      const text = contentLine("SUMMARY", value);
      for (const piece of text.split("\r\n")) {
        expect(octets(piece)).toBeLessThanOrEqual(75);
        // Half a pair of code units would come back as the replacement character.
        expect(new TextDecoder().decode(new TextEncoder().encode(piece))).toBe(piece);
      }
      expect(unfolded(text)).toEqual([`SUMMARY:${value}`]);
    }
  });

  it("[P52] a text's backslash, semicolon, comma and line break are escaped, a colon is not", () => {
    // RFC 5545, section 3.3.11, ESCAPED-CHAR; the second is its worked example.
    expect(textValue("Salt; pepper, a\\b: 1\n2\r\n3")).toBe("Salt\\; pepper\\, a\\\\b: 1\\n2\\n3");
    expect(textValue("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")).toBe(
      "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
    );
  });

  it("[P52] what may not stand in a file at all is left out", () => {
    // RFC 5545, section 3.1: VALUE-CHAR has no CONTROL but the tab.
    expect(textValue("a\u0000b\u0007c\td\u007F")).toBe("abc\td");
    expect(textValue("half a pair: \uD83E")).toBe("half a pair: \uFFFD");
  });

  it.each([
    // RFC 5545, section 3.3.5, form 2: January 19, 1998, at 0700 UTC.
    [Date.UTC(1998, 0, 19, 7), "19980119T070000Z"],
    [Date.UTC(2000, 1, 29, 23, 59, 59, 999), "20000229T235959Z"],
    [Date.UTC(2100, 2, 1), "21000301T000000Z"],
    [Date.UTC(1969, 11, 31, 23, 59, 59), "19691231T235959Z"],
  ])("[P53] a moment is written in UTC: %i as %s", (epochMs, written) => {
    expect(utcDateTime(instant(epochMs))).toBe(written);
  });

  it("[P53] every day of four hundred years is the one that the platform's own calendar has", () => {
    const first = Date.UTC(1900, 0, 1);
    for (let day = 0; day < 146_097; day += 1) {
      const epochMs = first + day * 86_400_000;
      const own = new Date(epochMs).toISOString().slice(0, 10).replaceAll("-", "");
      if (!utcDateTime(instant(epochMs)).startsWith(own)) expect(utcDateTime(instant(epochMs))).toBe(own);
    }
  });
});

describe("the evening's calendar", () => {
  const text = calendarOf(evening, mark);

  it("[P54] one calendar: version and maker once, no METHOD, CRLF behind every line", () => {
    // RFC 5545, sections 3.4, 3.6 and 3.7: PRODID and VERSION must stand, once each.
    expect(text.startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Stovecall//Run sheet//EN\r\n")).toBe(
      true,
    );
    expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(text).not.toMatch(/^METHOD/m);
    expect(text.match(/^(?:PRODID|VERSION):/gm)).toHaveLength(2);
  });

  it("[P54] every event has what it must have, once, and ends after it begins", () => {
    // RFC 5545, section 3.6.1: UID and DTSTAMP required, once; DTSTART required without METHOD; DTEND or DURATION.
    const events = blocks(text, "VEVENT");
    expect(events.length).toBeGreaterThan(5);
    for (const lines of events) {
      const own = lines.slice(
        0,
        lines.indexOf("BEGIN:VALARM") === -1 ? lines.length : lines.indexOf("BEGIN:VALARM"),
      );
      const value = (name: string): string => {
        const found = own.filter((line) => line.startsWith(`${name}:`));
        expect([name, found.length]).toEqual([name, 1]);
        return found[0]?.slice(name.length + 1) ?? "";
      };
      for (const name of ["UID", "DTSTAMP", "SUMMARY", "TRANSP"]) expect(value(name)).not.toBe("");
      expect(value("DTEND") > value("DTSTART")).toBe(true);
      // Section 3.3.5, form 2: the Z, and no TZID.
      for (const name of ["DTSTAMP", "DTSTART", "DTEND"]) expect(value(name)).toMatch(/^\d{8}T\d{6}Z$/);
      expect(["OPAQUE", "TRANSPARENT"]).toContain(value("TRANSP"));
    }
  });

  it("[P54] every reminder shows words at a time before or at the start", () => {
    // RFC 5545, section 3.6.6: dispprop needs ACTION, DESCRIPTION and TRIGGER; section 3.3.6 for the duration.
    const alarms = blocks(text, "VALARM");
    expect(alarms).toHaveLength(blocks(text, "VEVENT").length);
    for (const lines of alarms) {
      expect(lines.filter((line) => line === "ACTION:DISPLAY")).toHaveLength(1);
      expect(lines.filter((line) => /^DESCRIPTION:./.test(line))).toHaveLength(1);
      expect(lines.filter((line) => /^TRIGGER:(?:-PT\d+M|PT0S)$/.test(line))).toHaveLength(1);
      expect(lines).toHaveLength(5);
    }
  });

  it("[P55] it holds the cooking, the oven, what is long unattended, each dish's first hands-on step, serving, storing", () => {
    const moments = bigMoments(evening);
    expect(moments.map(({ key, from, to }) => [key, (from - at(0)) / 60_000, (to - from) / 60_000])).toEqual([
      ["cook", 0, 60],
      ["step.squash/halve", 0, 8],
      ["oven.oven.squash/roast", 2, 10],
      ["step.slaw/shred", 9, 6],
      ["step.squash/roast", 12, 40],
      ["serve", 90, 30],
      ["store", 180, 30],
    ]);
  });

  it("[P55] what is left is stored within two hours of serving, and a late dinner is served when it is ready", () => {
    // recipes/README.md: within two hours into the fridge.
    const late = { ...evening, serveAt: at(30) };
    const [serve, store] = bigMoments(late).slice(-2);
    expect(serve?.from).toBe(bakedSheet.readyAt);
    expect((store?.to ?? 0) - (serve?.from ?? 0)).toBe(2 * 3_600_000);
    expect(bigMoments({ ...evening, serveAt: null }).at(-2)?.from).toBe(bakedSheet.readyAt);
  });

  it("[P55] a dish's cautions stand with its first step, what the plan breaks with the cooking", () => {
    const sheet = { ...bakedSheet, broken: ["Dinner will be late."] };
    const moments = bigMoments({ ...evening, sheet });
    expect(moments.find(({ key }) => key === "step.slaw/shred")?.about).toContain("The knife is sharp.");
    expect(moments[0]?.about).toContain("Dinner will be late.");
  });

  it("[P56] the same step has the same UID whenever it is planned or written; no two are the same", () => {
    const uids = (written: string): readonly string[] =>
      unfolded(written).filter((line) => line.startsWith("UID:"));
    const moved = {
      ...bakedSheet,
      entries: bakedSheet.entries.map((one) => ({ ...one, start: plus(one.start, minutes(1)) })),
    };
    const again = calendarOf({ ...evening, sheet: moved }, { ...mark, stamp: plus(mark.stamp, minutes(9)) });
    expect(uids(again)).toEqual(uids(text));
    expect(new Set(uids(text)).size).toBe(uids(text).length);
    expect(uids(text)[1]).toBe("UID:test-supper.step.squash/halve@evening-1.stovecall");
    expect(uids(calendarOf(evening, { ...mark, uidBase: "evening-2.stovecall" }))).not.toEqual(uids(text));
  });

  it("[P57] in mid-meal what is over is left out, and nothing reminds of a time gone by", () => {
    const written = calendarOf(evening, { ...mark, stamp: at(20) });
    const titles = unfolded(written).filter((line) => line.startsWith("SUMMARY:"));
    expect(titles).toEqual([
      "SUMMARY:Cook: Test supper",
      "SUMMARY:squash: roast",
      "SUMMARY:Serve: Test supper",
      "SUMMARY:Store what is left of Test supper",
    ]);
    expect(blocks(written, "VALARM")).toHaveLength(2);
  });

  it("[P55] a meal of which nothing is planned still gives a calendar that may be read", () => {
    const sheet = { ...bakedSheet, entries: [], ovenMoves: [] };
    const written = calendarOf({ ...evening, sheet, serveAt: null }, mark);
    expect(
      blocks(written, "VEVENT").map((lines) => lines.find((line) => line.startsWith("SUMMARY"))),
    ).toEqual([
      "SUMMARY:Serve: Test supper",
      "SUMMARY:Cook: Test supper",
      "SUMMARY:Store what is left of Test supper",
    ]);
  });
});
