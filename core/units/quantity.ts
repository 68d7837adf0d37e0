declare const unit: unique symbol;

/** A number that knows its unit, so that seconds cannot be passed where grams are wanted. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

/** A length of time in seconds. */
export type Seconds = Quantity<"s">;
/** A moment, in milliseconds since 1970-01-01T00:00:00Z, handed in by the shell. */
export type Instant = Quantity<"epoch ms">;
/** A mass in grams. */
export type Grams = Quantity<"g">;
/** A temperature in degrees Celsius. */
export type Celsius = Quantity<"degC">;
/** A temperature in degrees Fahrenheit. */
export type Fahrenheit = Quantity<"degF">;
/** A volume in millilitres. */
export type Milliliters = Quantity<"ml">;

/** Seconds from a plain number of seconds. */
export const seconds = (n: number): Seconds => n as Seconds;
/** Seconds from a plain number of minutes. */
export const minutes = (n: number): Seconds => seconds(n * 60);
/** Seconds from a plain number of hours. */
export const hours = (n: number): Seconds => seconds(n * 3600);
/** Seconds from a plain number of days of 24 hours. */
export const days = (n: number): Seconds => seconds(n * 86_400);
/** An instant from milliseconds since 1970-01-01T00:00:00Z. */
export const instant = (epochMs: number): Instant => epochMs as Instant;
/** Grams from a plain number. */
export const grams = (n: number): Grams => n as Grams;
/** Degrees Celsius from a plain number. */
export const celsius = (n: number): Celsius => n as Celsius;
/** Degrees Fahrenheit from a plain number. */
export const fahrenheit = (n: number): Fahrenheit => n as Fahrenheit;
/** Millilitres from a plain number. */
export const milliliters = (n: number): Milliliters => n as Milliliters;

/** The moment `length` after `at` (before it, when the length is negative). */
export const plus = (at: Instant, length: Seconds): Instant => instant(at + length * 1000);
/** The moment `length` before `at`. */
export const minus = (at: Instant, length: Seconds): Instant => instant(at - length * 1000);
/** How long from `a` to `b`, in seconds; negative when `b` comes first. */
export const between = (a: Instant, b: Instant): Seconds => seconds((b - a) / 1000);
/** A length as a plain number of minutes, not rounded. */
export const inMinutes = (length: Seconds): number => length / 60;
/** Two lengths laid end to end. */
export const addSeconds = (a: Seconds, b: Seconds): Seconds => seconds(a + b);
/** The longer of two lengths. */
export const longer = (a: Seconds, b: Seconds): Seconds => (a >= b ? a : b);
/** The earlier of two moments. */
export const earlier = (a: Instant, b: Instant): Instant => (a <= b ? a : b);
/** The later of two moments. */
export const later = (a: Instant, b: Instant): Instant => (a >= b ? a : b);
