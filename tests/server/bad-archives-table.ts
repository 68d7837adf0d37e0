import { gunzipSync, gzipSync } from "node:zlib";
import { piecesOf, tarGz, zip } from "./invented-models.ts";

/** One archive that is refused: what it is, its name, how it is made, and the sentence. */
export type BadArchive = readonly [
  what: string,
  file: string,
  make: () => Promise<Buffer | string> | Buffer | string,
  sentence: RegExp,
];

/** One byte in its middle turned over. */
function spoilt(bytes: Buffer): Buffer {
  const copy = Buffer.from(bytes);
  const middle = Math.floor(copy.length / 2);
  copy[middle] = (copy[middle] ?? 0) ^ 0xff;
  return copy;
}

/** Everything that an archive can be instead of a model. */
export const badArchives: readonly BadArchive[] = [
  ["a text", "m.zip", () => "hello", /^m\.zip is not an archive\. Give a zip, a tar\.gz or a folder\.$/],
  ["nothing", "m.zip", () => "", /^m\.zip is empty\./],
  [
    "a web page",
    "m.zip",
    () => "<!DOCTYPE html><html>",
    /^m\.zip is a web page, not a zip or a tar\.gz\. Look for the address/,
  ],
  [
    "7z",
    "m.7z",
    () => Buffer.from("7z\xbc\xaf\x27\x1c", "latin1"),
    /^m\.7z is packed as 7z, .*Unpack it yourself/,
  ],
  ["a zip cut short", "m.zip", () => zip(piecesOf("m")).subarray(0, -30), /^m\.zip ends too early/],
  [
    "a tar.gz cut short",
    "m.tgz",
    async () => (await tarGz(piecesOf("m"))).subarray(0, -40),
    /^m\.tgz ends too early/,
  ],
  [
    "a tar cut short in its gzip",
    "m.tgz",
    async () => gzipSync(gunzipSync(await tarGz(piecesOf("m"))).subarray(0, 700)),
    /^m\.tgz ends too early/,
  ],
  ["a gzip of no tar", "m.tgz", () => gzipSync(Buffer.alloc(2048, "no tar ")), /^m\.tgz is damaged/],
  ["a gzip damaged inside", "m.tgz", async () => spoilt(await tarGz(piecesOf("m"))), /^m\.tgz is damaged/],
  ["a zip whose checksum is wrong", "m.zip", () => zip(piecesOf("m"), { crc: 1 }), /^m\.zip is damaged/],
  [
    "a zip with a password",
    "m.zip",
    () => zip(piecesOf("m"), { flags: 1 }),
    /^m\.zip is locked with a password/,
  ],
  [
    "a zip of another method",
    "m.zip",
    () => zip(piecesOf("m"), { method: 14 }),
    /^m\.zip is packed in a way that is not read here/,
  ],
  [
    "a zip with ..",
    "m.zip",
    () => zip([...piecesOf("m"), { path: "m/../../evil" }]),
    /^m\.zip holds a file that would land outside its folder \(".*evil"\)/,
  ],
  [
    "a tar.gz with ..",
    "m.tgz",
    () => tarGz([...piecesOf("m"), { path: "m/../../evil" }]),
    /^m\.tgz holds a file that would land outside/,
  ],
  [
    "a zip with an absolute path",
    "m.zip",
    () => zip([{ path: "/etc/evil" }]),
    /^m\.zip holds a file that would land outside its folder \("\/etc\/evil"\)/,
  ],
  [
    "a tar.gz with an absolute path",
    "m.tgz",
    () => tarGz([{ path: "/etc/evil" }]),
    /^m\.tgz holds a file that would land outside/,
  ],
  [
    "a zip with a drive letter",
    "m.zip",
    () => zip([{ path: "C:\\evil" }]),
    /^m\.zip holds a file that would land outside/,
  ],
  [
    "a name that would speak to the terminal",
    "m.tgz",
    () => tarGz([{ path: "m/\u001b[2Jx" }]),
    /would land outside its folder \("m\/\?\[2Jx"\)/,
  ],
  [
    "a zip with a link",
    "m.zip",
    () => zip([...piecesOf("m"), { path: "m/am/link", link: "/etc/passwd" }]),
    /^m\.zip holds a link or a device \("m\/am\/link"\)/,
  ],
  [
    "a tar.gz with a link",
    "m.tgz",
    () => tarGz([...piecesOf("m"), { path: "m/link", link: "/etc/passwd" }]),
    /^m\.tgz holds a link or a device/,
  ],
  [
    "too many files",
    "m.tgz",
    () => tarGz(Array.from({ length: 2_001 }, (_one, index) => ({ path: `m/${index}` }))),
    /^m\.tgz holds more than 2000 files/,
  ],
  [
    "a zip bomb",
    "m.zip",
    () => zip([...piecesOf("m"), { path: "m/bomb", content: Buffer.alloc(40_000_000) }]),
    /^m\.zip unpacks to more than 40 times its size/,
  ],
  [
    "a tar.gz bomb",
    "m.tgz",
    () => tarGz([...piecesOf("m"), { path: "m/bomb", content: Buffer.alloc(40_000_000) }]),
    /^m\.tgz unpacks to more than 40 times its size/,
  ],
  [
    "no model",
    "m.zip",
    () => zip([{ path: "m/readme.txt", content: Buffer.from("x") }]),
    /^There is no Vosk model in m\.zip: no am\/final\.mdl/,
  ],
  ["an archive of nothing", "m.tgz", () => gzipSync(Buffer.alloc(1024)), /^There is no Vosk model in m\.tgz/],
  [
    "several models",
    "m.zip",
    () => zip([...piecesOf("one"), ...piecesOf("two")]),
    /^m\.zip holds several models\./,
  ],
  [
    "another rate",
    "m.zip",
    () => zip(piecesOf("m", { "conf/mfcc.conf": "--sample-frequency=8000\n" })),
    /was made for sound of 8000 samples a second; the kitchen listens at 16000/,
  ],
  [
    "no graph",
    "m.zip",
    () => zip(piecesOf("m", { "graph/Gr.fst": null })),
    /not whole: graph\/HCLG\.fst, or HCLr\.fst with Gr\.fst, is missing/,
  ],
  [
    "no settings",
    "m.zip",
    () => zip(piecesOf("m", { "conf/model.conf": null })),
    /not whole: conf\/model\.conf is missing/,
  ],
  [
    "no features",
    "m.zip",
    () => zip(piecesOf("m", { "conf/mfcc.conf": null })),
    /not whole: conf\/mfcc\.conf is missing/,
  ],
  [
    "half an ivector",
    "m.zip",
    () => zip(piecesOf("m", { "ivector/final.ie": "x" })),
    /not whole: ivector\/final\.mat is missing/,
  ],
  [
    "notes for files kept elsewhere",
    "m.zip",
    () => zip(piecesOf("m", { "am/final.mdl": "version https://git-lfs.github.com/spec/v1\n" })),
    /m\/am\/final\.mdl has the right name and something else in it/,
  ],
  [
    "a graph of something else",
    "m.zip",
    () => zip(piecesOf("m", { "graph/Gr.fst": "text" })),
    /m\/graph\/Gr\.fst has the right name and something else/,
  ],
];
