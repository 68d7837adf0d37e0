import { utf8 } from "./utf8.ts";

/**
 * An archive that every operating system opens: ZIP, each file stored as it is (sound hardly shrinks by deflation),
 * names in UTF-8, dated 1 January 1980, where its calendar begins.
 * Source: PKWARE, APPNOTE.TXT 6.3.3, sections 4.3.7, 4.3.12 and 4.3.16; CRC-32 as in ISO 3309.
 */

/** One file to go into an archive. */
export type ZipFile = { readonly name: string; readonly bytes: Uint8Array };

const newYear1980 = 0x21;
const namesInUtf8 = 0x0800;
/** "Version needed": folders and plain files. */
const version = 20;

/** The whole archive. At most 65,535 files and 4 GiB, which is all that the plain form holds. */
export function zipArchive(files: readonly ZipFile[]): Uint8Array {
  const parts: Uint8Array[] = [];
  const entries: Uint8Array[] = [];
  let at = 0;
  for (const { name, bytes } of files) {
    const label = utf8(name);
    const common = commonFields(bytes, label.length);
    const local = joined([fields([[0x04034b50, 4]]), common, label]);
    entries.push(joined([directoryStart, common, directoryRest(at), label]));
    parts.push(local, bytes);
    at += local.length + bytes.length;
  }
  const directory = joined(entries);
  const end = fields([
    [0x06054b50, 4],
    [0, 2],
    [0, 2],
    [files.length, 2],
    [files.length, 2],
    [directory.length, 4],
    [at, 4],
    [0, 2],
  ]);
  return joined([...parts, directory, end]);
}

/** How an entry of the directory begins: its mark, and what wrote it. */
const directoryStart = fields([
  [0x02014b50, 4],
  [version, 2],
]);

/** No comment, on the first disk, without attributes; then where the file itself begins. */
function directoryRest(at: number): Uint8Array {
  return fields([
    [0, 2],
    [0, 2],
    [0, 2],
    [0, 4],
    [at, 4],
  ]);
}

/** What stands both before a file and in the directory. */
function commonFields(bytes: Uint8Array, nameLength: number): Uint8Array {
  return fields([
    [version, 2],
    [namesInUtf8, 2],
    [0, 2],
    [0, 2],
    [newYear1980, 2],
    [crc32(bytes), 4],
    [bytes.length, 4],
    [bytes.length, 4],
    [nameLength, 2],
    [0, 2],
  ]);
}

/** Numbers one after another, little-endian. */
function fields(numbers: readonly (readonly [value: number, bytes: 2 | 4])[]): Uint8Array {
  const made = new Uint8Array(numbers.reduce((sum, [, length]) => sum + length, 0));
  const view = new DataView(made.buffer);
  let at = 0;
  for (const [value, length] of numbers) {
    if (length === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += length;
  }
  return made;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (crcTable[(crc ^ byte) & 0xff] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
}
