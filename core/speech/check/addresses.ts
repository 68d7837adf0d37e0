/**
 * Addresses to take where the present one is confused, first those that share one word with the usual one. The ear that
 * comes with the program heard each before five sentences by seven voices built from people's recordings, in quiet:
 * 35 of 35. How often other talk resembles them was measured for "listen kitchen" alone.
 */
export const addresses: readonly string[] = [
  "attention kitchen",
  "listen pantry",
  "hello kitchen",
  "listen kitchen",
];

/** In so many of the five sentences the address is lost before another one is offered. */
export const confusedTimes = 2;
