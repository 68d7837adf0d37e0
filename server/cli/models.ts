import { resolve } from "node:path";
import { err, ok, type Result } from "../../core/units/result.ts";
import { type AddedModel, type Addition, addModel } from "../models/add-model.ts";
import { megabytes } from "../models/archive.ts";
import { notStated } from "../models/manifest.ts";
import { type ListedModel, chosenEngine, modelsIn } from "../models/models-in.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { inProgram } from "./in-program.ts";
import { printData, printMessage } from "./print.ts";

const help = `models: tell which speech models lie in models/, whether each is right, and what the page listens with.
models add FILE|FOLDER|URL: check a Vosk model and put it there, packed as the page wants it.

  --licence TEXT  the terms under which its maker gives it; recorded as "${notStated}" unless given
  --name NAME     what to call it; the name of its own folder unless given
  --sha256 HEX    what the checksum of FILE, or of what URL gives, must be
  --models DIR    the folder of speech models; the program's own unless given
  --json          one object a line: each model, then the engine; after "add", the model

A FILE is a zip or a tar.gz. A URL is fetched only because you name it here: by https, or http on this machine. A
download that was cut goes on when the same command is run again. models/README.md tells more.

Example: models add ~/Downloads/small-english.zip --licence "Apache-2.0, says its page"`;

const options = {
  licence: { type: "string" },
  name: { type: "string" },
  sha256: { type: "string" },
  models: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly folder: string;
  readonly json: boolean;
  /** Null: only tell what is there. */
  readonly addition: Addition | null;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const folder = values.models === undefined ? inProgram("models") : resolve(values.models);
  const [verb, from, tooMuch] = positionals;
  if (verb === undefined) {
    const [stray] = (["licence", "name", "sha256"] as const).filter((name) => values[name] !== undefined);
    return stray === undefined
      ? ok({ folder, json: values.json, addition: null })
      : err(`--${stray} belongs to "models add".`);
  }
  if (verb !== "add") return err(`models knows "add" and no "${verb}".`);
  if (from === undefined) return err("Name what to add: models add FILE|FOLDER|URL");
  if (tooMuch !== undefined) return err(`models add takes one model; "${tooMuch}" is one word too many.`);
  const addition = readAddition(from, values);
  return addition.ok ? ok({ folder, json: values.json, addition: addition.value }) : addition;
}

function readAddition(
  from: string,
  { name, licence, sha256 }: { readonly name?: string; readonly licence?: string; readonly sha256?: string },
): Result<Addition, string> {
  if (name !== undefined && !/^\w[\w.-]{0,99}$/.test(name))
    return err(`"${name}" cannot be a name. Write letters, digits, points and dashes after --name.`);
  if (sha256 !== undefined && !/^[0-9a-f]{64}$/i.test(sha256))
    return err("A SHA-256 checksum has 64 digits from 0 to 9 and a to f. Copy it whole after --sha256.");
  const terms = licence?.trim() ?? "";
  return ok({
    from,
    name: name ?? null,
    licence: terms === "" ? notStated : terms,
    sha256: sha256?.toLowerCase() ?? null,
  });
}

/** What the kind of a model's graph means for the cook. */
const graphWords = {
  open: "takes the list of what can be said",
  fixed: "ignores the list of what can be said, so it hears worse than one that takes it",
} as const;

function listedWords(model: ListedModel): string {
  const { file, bytes, problem, graph, sampleRateHz, licence, source } = model;
  const about = [
    megabytes(bytes),
    ...(sampleRateHz === null ? [] : [`${sampleRateHz} Hz`]),
    ...(graph === null ? [] : [graphWords[graph]]),
    `licence: ${licence}`,
    ...(source === null ? [] : [`from ${source}`]),
  ].join("; ");
  return problem === null ? `${file}: right. ${about}` : `${file}: WRONG. ${problem}`;
}

async function list({ folder, json }: Wanted): Promise<ExitCode> {
  const models = await modelsIn(folder);
  const chosen = chosenEngine(models);
  for (const model of models) printData(json ? JSON.stringify(model) : listedWords(model));
  printData(json ? JSON.stringify(chosen) : chosen.why);
  return models.every(({ problem }) => problem === null) ? exit.right : exit.refused;
}

function addedWords({ name, bytes, unpackedBytes, sampleRateHz, graph, licence }: AddedModel): string {
  return [
    `${name} lies in the models folder: ${megabytes(bytes)}, ${megabytes(unpackedBytes)} unpacked, ${sampleRateHz} Hz.`,
    `It ${graphWords[graph]}.`,
    licence === notStated
      ? 'Its licence is not stated. Look it up where you found it, and write it into its manifest or add it with --licence "…".'
      : `Its licence, as you gave it: ${licence}`,
    "How well it hears in a kitchen has not been measured by this project. The page uses it when it is loaded anew.",
  ].join("\n");
}

async function add({ folder, json }: Wanted, addition: Addition): Promise<ExitCode> {
  const stopping = new AbortController();
  const stop = (): void => stopping.abort();
  process.once("SIGINT", stop).once("SIGTERM", stop);
  const added = await addModel(addition, {
    modelsFolder: folder,
    signal: stopping.signal,
    tell: printMessage,
  });
  process.off("SIGINT", stop).off("SIGTERM", stop);
  if (!added.ok) {
    printMessage(added.error);
    return exit.refused;
  }
  printData(json ? JSON.stringify(added.value) : addedWords(added.value));
  if (json && added.value.licence === notStated)
    printMessage("Its licence is not stated; --licence records it.");
  return exit.right;
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const { addition } = wanted.value;
  return addition === null ? list(wanted.value) : add(wanted.value, addition);
}

/** `models`: the speech models that the cook has, checked and added. */
export const modelsCommand: CliCommand = {
  name: "models",
  summary: "check the speech models in models/, or add one",
  help,
  run,
};
