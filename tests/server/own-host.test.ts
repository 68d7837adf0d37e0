import { describe, expect, it } from "vitest";
import { isOwnHost, isOwnPage } from "../../server/web/own-host.ts";
import { rateLimit } from "../../server/web/rate-limit.ts";

describe("who may speak to the server", () => {
  it.each(["localhost:8321", "127.0.0.1:8321", "LOCALHOST", "[::1]:8321", "127.0.0.1"])(
    "[N20] %s is this machine",
    (host) => expect(isOwnHost(host)).toBe(true),
  );

  it.each([
    undefined,
    "",
    "kitchen.example",
    "127.0.0.1.evil.example:8321",
    "localhost.evil.example",
    "evil.example:localhost",
    "127.0.0.1:8321:1",
    "[::2]:8321",
    "user@localhost",
    "10.0.0.7:8321",
  ])("[N20] %s is not this machine", (host) => expect(isOwnHost(host)).toBe(false));

  const host = "127.0.0.1:8321";

  it.each([
    ["our page", { host, origin: "http://127.0.0.1:8321" }],
    [
      "our page, by a browser that says so",
      { host, origin: "http://127.0.0.1:8321", "sec-fetch-site": "same-origin" },
    ],
    ["a program on this machine", { host }],
  ])("[N21] %s may connect", (_name, headers) => expect(isOwnPage({ headers })).toBe(true));

  it.each([
    ["a foreign page", { host, origin: "https://evil.example" }],
    ["another server on this machine", { host, origin: "http://127.0.0.1:9000" }],
    ["our name over another scheme", { host, origin: "https://127.0.0.1:8321" }],
    ["a sandboxed frame", { host, origin: "null" }],
    ["a page that hides its origin", { host, "sec-fetch-site": "cross-site" }],
    ["a name that was made to point here", { host: "evil.example:8321", origin: "http://evil.example:8321" }],
  ])("[N21] %s may not connect", (_name, headers) => expect(isOwnPage({ headers })).toBe(false));
});

describe("how fast a device may give commands", () => {
  it("[N22] twenty in any second pass, the next one a second after the first", () => {
    const mayPass = rateLimit(20);
    const passed = Array.from({ length: 30 }, (_, index) => mayPass(1000 + index * 10));
    expect(passed.filter(Boolean)).toHaveLength(20);
    expect(mayPass(1999)).toBe(false);
    expect(mayPass(2000)).toBe(true);
    expect(mayPass(2001)).toBe(false);
  });
});
