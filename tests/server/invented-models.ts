import { crc32, deflateRawSync, gzipSync } from "node:zlib";
import { pack } from "tar-stream";

/** One thing in an invented archive. */
export interface Piece {
  readonly path: string;
  readonly content?: Buffer;
  /** For a link: where it points. */
  readonly link?: string;
  /** A folder has no content. */
  readonly isFolder?: boolean;
}

/** OpenFst's magic number, little-endian, as every transducer begins. */
const transducer = Buffer.from([0xd6, 0xfd, 0xb2, 0x7e, 6, 0, 0, 0]);
const acoustic = Buffer.from(
  "\0B<TransitionModel> made up for a test, and nothing that could listen",
  "latin1",
);

/** The files of a model by their paths below its folder: the right names and beginnings, and nothing that hears. */
export const openModel: Readonly<Record<string, Buffer>> = {
  "am/final.mdl": acoustic,
  "conf/mfcc.conf": Buffer.from("--use-energy=false\n--sample-frequency=16000\n--num-ceps=40\n"),
  "conf/model.conf": Buffer.from("--min-active=200\n--beam=10.0\n"),
  "graph/HCLr.fst": transducer,
  "graph/Gr.fst": transducer,
  "graph/phones/word_boundary.int": Buffer.from("1 nonword\n"),
  README: Buffer.from("An invented model.\n"),
};

/** The same under a folder, some files changed; null leaves a file out. */
export function piecesOf(
  folder: string,
  changes: Readonly<Record<string, Buffer | string | null>> = {},
): readonly Piece[] {
  const files: Record<string, Buffer | string | null> = { ...openModel, ...changes };
  return Object.entries(files).flatMap(([path, content]) =>
    content === null
      ? []
      : [{ path: folder === "" ? path : `${folder}/${path}`, content: Buffer.from(content) }],
  );
}

/** A tar.gz. */
export async function tarGz(pieces: readonly Piece[]): Promise<Buffer> {
  const packing = pack();
  for (const { path, content, link, isFolder } of pieces) {
    if (link !== undefined) packing.entry({ name: path, type: "symlink", linkname: link });
    else if (isFolder === true) packing.entry({ name: path, type: "directory" });
    else packing.entry({ name: path }, content ?? Buffer.alloc(0));
  }
  packing.finalize();
  const parts: Buffer[] = [];
  for await (const part of packing) parts.push(part);
  return gzipSync(Buffer.concat(parts));
}

/**
 * A zip, as APPNOTE.TXT 6.3.10 has it: local headers (4.3.7), the central directory (4.3.12), its end (4.3.16).
 * @param lie what a header says in place of the truth
 */
export function zip(
  pieces: readonly Piece[],
  lie: { readonly crc?: number; readonly flags?: number; readonly method?: number } = {},
): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const { path, content = Buffer.alloc(0), link, isFolder } of pieces) {
    const plain = link === undefined ? content : Buffer.from(link);
    const packed = deflateRawSync(plain);
    const name = Buffer.from(isFolder === true ? `${path}/` : path);
    const about = Buffer.alloc(26);
    about.writeUInt16LE(20, 0);
    about.writeUInt16LE(0x800 | (lie.flags ?? 0), 2);
    about.writeUInt16LE(lie.method ?? 8, 4);
    about.writeUInt32LE(lie.crc ?? crc32(plain), 10);
    about.writeUInt32LE(packed.length, 14);
    about.writeUInt32LE(plain.length, 18);
    about.writeUInt16LE(name.length, 22);
    const mode = link !== undefined ? 0o120777 : isFolder === true ? 0o040755 : 0o100644;
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE((mode << 16) >>> 0, 6);
    tail.writeUInt32LE(offset, 10);
    const local = Buffer.concat([Buffer.from("PK\x03\x04"), about, name, packed]);
    central.push(Buffer.concat([Buffer.from("PK\x01\x02\x14\x03"), about, tail, name]));
    locals.push(local);
    offset += local.length;
  }
  const list = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06");
  end.writeUInt16LE(pieces.length, 8);
  end.writeUInt16LE(pieces.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, list, end]);
}
