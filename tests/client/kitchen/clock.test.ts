import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createClock, isWaking } from "../../../client/kitchen/clock.ts";
import type { Clock } from "../../../client/kitchen/clock.ts";
import { ringTimers } from "../../../client/kitchen/rings.ts";
import { timerId } from "../../../core/cook/orders.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { hours, instant, minus, minutes, plus, seconds } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { evening, five, give } from "../../core/cook/supper.ts";
import { kitchen } from "../sound/kitchen.ts";

let clock: Clock;

beforeEach(() => {
  vi.useFakeTimers({ now: five, toFake: ["Date", "performance", "setTimeout", "clearTimeout"] });
  vi.stubGlobal("window", globalThis);
  vi.stubGlobal("document", new EventTarget());
  clock = createClock();
});
afterEach(() => {
  clock.close();
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
  vi.useRealTimers();
});

/** The device's clock leaps, and while it does nothing runs; then its next second begins. */
function leap(to: Instant): void {
  vi.setSystemTime(to);
  vi.advanceTimersByTime(1000);
}

describe("the clock of a device", () => {
  it("[N83] set back by hand, it goes on at its own pace, and its workers still get their deadlines right", () => {
    vi.advanceTimersByTime(60_000);
    leap(minus(five, hours(1)));
    expect(clock.read()).toBe(plus(five, seconds(61)));
    expect(clock.now.value).toBe(plus(five, seconds(61)));
    expect(clock.onDevice(clock.read())).toBe(Date.now());
    expect(clock.slept.value).toBeNull();
    clock.follow(plus(five, seconds(62)));
    expect(clock.read()).toBe(plus(five, seconds(62)));
    leap(plus(five, seconds(61)));
    expect(clock.read()).toBeGreaterThan(plus(five, seconds(62)));
  });

  it("[N83] an hour wrong, it follows the server's time; a moment of network keeps its own", () => {
    clock.follow(plus(five, hours(1)));
    expect([clock.read(), clock.slept.value]).toEqual([plus(five, hours(1)), null]);
    expect(clock.onDevice(plus(five, hours(2)))).toBe(plus(five, hours(1)));
    clock.follow(minus(five, hours(1)));
    expect([clock.read(), clock.slept.value]).toEqual([minus(five, hours(1)), null]);
    clock.follow(plus(five, seconds(0.7)));
    expect(clock.read()).toBe(five);
  });

  it("[N84] a leap is a sleep, and just after it the device is waking; a hidden page's minute is none", () => {
    leap(plus(five, minutes(1)));
    expect(clock.slept.value).toBeNull();
    const to = plus(five, minutes(41));
    leap(to);
    expect(clock.slept.value).toEqual({ from: plus(five, seconds(61)), to: plus(to, seconds(1)) });
    expect(isWaking(clock, clock.now.value)).toBe(true);
    clock.follow(clock.read());
    expect(isWaking(clock, clock.now.value)).toBe(true);
    vi.advanceTimersByTime(5000);
    expect(isWaking(clock, clock.now.value)).toBe(false);
    expect(clock.slept.value).not.toBeNull();
  });

  it("[N84] where the server says that it is not so late, the clock was only set ahead, and nobody slept", () => {
    leap(plus(five, hours(1)));
    expect(clock.slept.value).not.toBeNull();
    clock.follow(plus(five, seconds(1)));
    expect([clock.slept.value, clock.now.value]).toEqual([null, plus(five, seconds(1))]);
    vi.advanceTimersByTime(2000);
    expect([clock.slept.value, clock.now.value]).toEqual([null, plus(five, seconds(3))]);
  });

  it("[N85] local time is told by the offset of the moment it is told of", () => {
    vi.stubEnv("TZ", "Europe/Berlin");
    const offsets = [Date.UTC(2031, 2, 30, 0, 59), Date.UTC(2031, 2, 30, 1)].map(instant);
    expect(offsets.map(clock.utcOffsetMinutes)).toEqual([60, 120]);
  });
});

describe("rings on a device whose clock is wrong", () => {
  const bread: Order = {
    type: "StartTimer",
    timer: timerId("bread"),
    name: "flatbreads",
    span: { low: minutes(10), high: minutes(10) },
    dish: null,
  };

  it.each([
    ["ahead", -1],
    ["behind", 1],
  ])("[N83] an hour %s, a timer rings at its moment and not before", (_way, hoursOff) => {
    clock.follow(plus(five, hours(hoursOff)));
    const begun = clock.read();
    const log = give(evening(), hoursOff * 60, bread);
    const rung: number[] = [];
    const { sound } = kitchen();
    vi.spyOn(sound, "ring").mockImplementation(() => void rung.push(clock.read() - begun));
    const store = { session: signal(log.session) } as unknown as Parameters<typeof ringTimers>[1];
    const stop = ringTimers(clock, store, sound);
    vi.advanceTimersByTime(599_000);
    expect(rung).toEqual([]);
    vi.advanceTimersByTime(2000);
    expect(rung[0]).toBeGreaterThanOrEqual(599_500);
    expect(rung[0]).toBeLessThanOrEqual(600_000);
    stop();
  });
});
