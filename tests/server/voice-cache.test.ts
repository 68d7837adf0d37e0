import fc from "fast-check";
import { expect, it } from "vitest";
import { speechCache } from "../../server/voice/speech-cache.ts";

it("[S30] the sentence unused for longest is forgotten first", () => {
  const cache = speechCache({ maxEntries: 2, maxBytes: 100 });
  cache.put("a", new Uint8Array(1));
  cache.put("b", new Uint8Array(2));
  expect(cache.get("a")).toEqual(new Uint8Array(1));
  cache.put("c", new Uint8Array(3));
  expect([cache.get("a"), cache.get("b"), cache.get("c")]).toEqual([
    new Uint8Array(1),
    null,
    new Uint8Array(3),
  ]);
  expect(cache.bytes()).toBe(4);
});

it("[S30] the store never holds more sentences or bytes than its bounds, whatever is put in", () => {
  const puts = fc.array(fc.tuple(fc.constantFrom("a", "b", "c", "d", "e", "f"), fc.nat({ max: 60 })), {
    maxLength: 60,
  });
  fc.assert(
    fc.property(puts, (list) => {
      const cache = speechCache({ maxEntries: 3, maxBytes: 100 });
      for (const [key, size] of list) {
        cache.put(key, new Uint8Array(size));
        expect(cache.get(key)?.byteLength).toBe(size);
        const kept = ["a", "b", "c", "d", "e", "f"]
          .map((name) => cache.get(name))
          .filter((sound) => sound !== null);
        expect(kept.length).toBeLessThanOrEqual(3);
        expect(kept.reduce((sum, sound) => sum + sound.byteLength, 0)).toBe(cache.bytes());
        expect(cache.bytes()).toBeLessThanOrEqual(100);
      }
    }),
  );
});

it("[S30] a sound larger than the whole store is passed on but not kept", () => {
  const cache = speechCache({ maxEntries: 3, maxBytes: 10 });
  cache.put("a", new Uint8Array(11));
  expect([cache.get("a"), cache.bytes()]).toEqual([null, 0]);
});
