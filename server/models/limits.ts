import { Refused } from "./refused.ts";
import { megabytes } from "./archive.ts";

/** How much of an archive is believed. */
export interface Limits {
  /** Files and folders in it. A model has some dozens. */
  readonly entries: number;
  /** Unpacked bytes in all. */
  readonly unpackedBytes: number;
  /** Unpacked by packed bytes. The numbers of a model hardly shrink; its lists of words shrink to a quarter. */
  readonly ratio: number;
  /** Below this the ratio does not count: a small text may shrink a lot. */
  readonly ratioFromBytes: number;
  /** Bytes of the archive itself, and of a download. */
  readonly packedBytes: number;
}

const gibibyte = 2 ** 30;

/**
 * 4 GiB unpacked: more cannot be addressed by the engine, whose memory has at most 65,536 pages of 64 KiB.
 * Source of that: WebAssembly Core Specification 2.0, section 2.3.8 (limits of a 32-bit memory). The others are ours.
 */
export const usualLimits: Limits = {
  entries: 2_000,
  unpackedBytes: 4 * gibibyte,
  ratio: 40,
  ratioFromBytes: 32_000_000,
  packedBytes: 4 * gibibyte,
};

/** What an archive has come to so far; throws Refused where that is too much. */
export class Measure {
  private readonly name: string;
  private readonly packedBytes: number;
  private readonly limits: Limits;
  private entries = 0;
  private bytes = 0;

  constructor(name: string, packedBytes: number, limits: Limits) {
    this.name = name;
    this.packedBytes = packedBytes;
    this.limits = limits;
  }

  /** One more entry. @returns its path in our notation */
  entry(path: string): string {
    this.entries += 1;
    if (this.entries > this.limits.entries)
      throw new Refused(
        `${this.name} holds more than ${this.limits.entries} files, which no model does. Nothing was unpacked.`,
      );
    return safePath(path, this.name);
  }

  /** So many more unpacked bytes. */
  unpacked(bytes: number): void {
    this.bytes += bytes;
    if (this.bytes > this.limits.unpackedBytes)
      throw new Refused(
        `${this.name} unpacks to more than ${megabytes(this.limits.unpackedBytes)}, too much for the engine. Take a smaller model.`,
      );
    if (this.bytes > this.limits.ratioFromBytes && this.bytes > this.packedBytes * this.limits.ratio)
      throw new Refused(
        `${this.name} unpacks to more than ${this.limits.ratio} times its size, as an archive does that is made to fill a disk. It was not unpacked.`,
      );
  }
}

/**
 * A path of an archive without "." and doubled slashes.
 * Throws Refused where it leads out of the archive: absolute, with a drive letter, or with "..".
 */
export function safePath(path: string, archive: string): string {
  const parts = path
    .replaceAll("\\", "/")
    .split("/")
    .filter((part) => part !== "" && part !== ".");
  const leadsOut = /^(?:[\\/]|[A-Za-z]:)/.test(path) || parts.includes("..");
  if (leadsOut || /[\u0000-\u001f\u007f]/.test(path))
    throw new Refused(
      `${archive} holds a file that would land outside its folder ("${shown(path)}"). It is not to be trusted; nothing was unpacked.`,
    );
  return parts.join("/");
}

/** A name from outside as it may be printed. */
export function shown(text: string): string {
  const plain = [...text].map((letter) => (/[\p{L}\p{N}\p{P}\p{S} ]/u.test(letter) ? letter : "?")).join("");
  return plain.length > 80 ? `${plain.slice(0, 77)}…` : plain;
}
