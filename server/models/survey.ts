import { listeningRate } from "../../core/speech/samples.ts";
import type { Archive, ArchiveEntry } from "./archive.ts";
import { shown } from "./limits.ts";
import { Refused } from "./refused.ts";

/** A model that was found in an archive, in the layout that the engine reads. */
export interface FoundModel {
  /** The folder in the archive that holds am/, conf/ and graph/, without a slash at its end; "" for the top. */
  readonly root: string;
  /** Files below it. */
  readonly files: number;
  /** Their bytes, unpacked. */
  readonly bytes: number;
  /** What the model was made for, in Hz; Kaldi's default of 16,000 where its settings name none. */
  readonly sampleRateHz: number;
  /** Whether every folder has an entry of its own; the engine cannot keep the files of one that has none. */
  readonly namesFolders: boolean;
  /** `open`: takes the list of what can be said. `fixed`: hears any speech, and ignores that list. */
  readonly graph: "open" | "fixed";
}

const acoustic = "am/final.mdl";
const features = ["conf/mfcc.conf", "conf/fbank.conf"] as const;
const settings = "conf/model.conf";
const graphs = { fixed: ["graph/HCLG.fst"], open: ["graph/HCLr.fst", "graph/Gr.fst"] } as const;
/** What the engine opens where there is a folder ivector/. */
const speaker = [
  "final.ie",
  "final.mat",
  "final.dubm",
  "global_cmvn.stats",
  "online_cmvn.conf",
  "splice.conf",
];

/** A settings file is a page of text; more of it is not read. */
const mostSettings = 65_536;
/** So many settings files of features are looked at; an archive has one. */
const mostFeatureFiles = 8;

/**
 * What systems leave behind in archives and folders, and no part of a model.
 * A colon of theirs, a fork of ours: none of it is packed.
 */
export const isLitter = (path: string): boolean =>
  /(?:^|\/)(?:__MACOSX|\.git)(?:\/|$)|(?:^|\/)(?:\._[^/]*|\.DS_Store|Thumbs\.db|desktop\.ini)$/i.test(path);

/** A model as it is put together from the names and first bytes that a walk meets. */
interface Seen {
  readonly sizes: Map<string, number>;
  readonly rates: Map<string, number>;
  readonly folders: Set<string>;
  root: string | null;
}

/**
 * Walks the archive once and says what model it holds.
 * Throws Refused: no model, several, a file missing or no such file, made for another rate; and what the walk throws.
 */
export async function survey(archive: Archive): Promise<FoundModel> {
  const seen: Seen = { sizes: new Map(), rates: new Map(), folders: new Set(), root: null };
  for await (const entry of archive.walk()) {
    if (entry.kind === "folder") seen.folders.add(entry.path);
    else if (!isLitter(entry.path)) await take(entry, seen, archive.name);
  }
  return found(seen, archive.name);
}

async function take(entry: ArchiveEntry, seen: Seen, name: string): Promise<void> {
  const { path, bytes } = entry;
  seen.sizes.set(path, bytes);
  if (ends(path, acoustic)) {
    if (seen.root !== null)
      throw new Refused(
        `${name} holds several models. Unpack it and give the folder of the one that you want.`,
      );
    seen.root = path.slice(0, -acoustic.length).replace(/\/$/, "");
    if (!isKaldi(await entry.head(64))) throw new Refused(noSuchFile(path, name));
  } else if ([...graphs.fixed, ...graphs.open].some((graph) => ends(path, graph))) {
    if (!isTransducer(await entry.head(4))) throw new Refused(noSuchFile(path, name));
  } else if (features.some((file) => ends(path, file)) && seen.rates.size < mostFeatureFiles) {
    seen.rates.set(path, sampleRateIn((await entry.head(mostSettings)).toString("latin1")));
  }
}

const ends = (path: string, end: string): boolean => path === end || path.endsWith(`/${end}`);

const noSuchFile = (path: string, name: string): string =>
  `In ${name}, ${shown(path)} has the right name and something else in it. Fetch the model anew, from where it is kept.`;

/**
 * Kaldi's files begin with a zero and a B, or with the name of what they hold in text.
 * Source: Kaldi, "Kaldi I/O from a C++ level" (binary header "\0B"), from memory.
 */
function isKaldi(head: Buffer): boolean {
  return head.toString("latin1").replace(/^\0B/, "").startsWith("<TransitionModel>");
}

/** The four bytes that begin every transducer. Source: OpenFst, kFstMagicNumber = 2125659606, from memory. */
function isTransducer(head: Buffer): boolean {
  return head.length >= 4 && head.readInt32LE(0) === 2_125_659_606;
}

/** @param text lines such as "--sample-frequency=16000"; "#" begins a comment */
export function sampleRateIn(text: string): number {
  const rate = /^[ \t]*--sample-frequency[ \t]*=[ \t]*([\d.]+)/m.exec(text)?.[1];
  return rate === undefined ? 16_000 : Number(rate);
}

function found({ sizes, rates, folders, root }: Seen, name: string): FoundModel {
  if (root === null) throw new Refused(`There is no Vosk model in ${name}: no ${acoustic} in any folder.`);
  const at = (file: string): string => (root === "" ? file : `${root}/${file}`);
  const has = (file: string): boolean => sizes.has(at(file));
  const missing = (what: string): Refused =>
    new Refused(
      `The model in ${name} is not whole: ${what} is missing. Fetch it anew, or take another model.`,
    );
  const rate = features.map((file) => rates.get(at(file))).find((one) => one !== undefined);
  if (rate === undefined) throw missing(features[0]);
  if (!has(settings)) throw missing(settings);
  const graph = graphs.open.every(has) ? "open" : graphs.fixed.every(has) ? "fixed" : null;
  if (graph === null) throw missing("graph/HCLG.fst, or HCLr.fst with Gr.fst,");
  const below = [...sizes].filter(([path]) => root === "" || path.startsWith(`${root}/`));
  const hasSpeaker = below.some(([path]) => path.startsWith(at("ivector/")));
  const lost = hasSpeaker ? speaker.find((file) => !has(`ivector/${file}`)) : undefined;
  if (lost !== undefined) throw missing(`ivector/${lost}`);
  if (rate !== listeningRate)
    throw new Refused(
      `The model in ${name} was made for sound of ${rate} samples a second; the kitchen listens at ${listeningRate}. Take a model for that.`,
    );
  const bytes = below.reduce((sum, [, size]) => sum + size, 0);
  const namesFolders = below.every(([path]) => {
    const folder = path.slice(0, path.lastIndexOf("/"));
    return folder === root || folders.has(folder);
  });
  return { root, files: below.length, bytes, sampleRateHz: rate, namesFolders, graph };
}
