import { spawn } from "node:child_process";
import { once } from "node:events";
import { resolve } from "node:path";
import { MealBook } from "../kitchen/meal-book.ts";
import { startServer } from "../web/start-server.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { inProgram } from "./in-program.ts";
import { printData, printMessage } from "./print.ts";

const defaultPort = 8321;

const help = `serve: start the kitchen's server and print the address of its page.

  --port N       the port to listen on; ${defaultPort} unless given, 0 for any free one
  --data DIR     ${dataFolderHelp}
  --recipes DIR  the folder of recipes and meals; the program's own unless given
  --models DIR   the folder of speech models; the program's own unless given
  --open         open the page in this machine's browser

It answers on this machine only. A meal that was being cooked when the server stopped goes on where it was.
Stop it with Ctrl-C.`;

const options = {
  port: { type: "string" },
  data: { type: "string" },
  recipes: { type: "string" },
  models: { type: "string" },
  open: { type: "boolean", default: false },
} as const;

function readPort(text: string | undefined): number | null {
  if (text === undefined) return defaultPort;
  return /^\d{1,5}$/.test(text) && Number(text) <= 65_535 ? Number(text) : null;
}

/** What shows an address on a desktop; those that are not named follow the freedesktop.org convention. */
const openers: Partial<Record<NodeJS.Platform, readonly string[]>> = {
  darwin: ["open"],
  win32: ["cmd", "/c", "start", ""],
};

/** Asks the desktop to show the page; a machine without one says what to do instead. */
function openInBrowser(url: string): void {
  const [program = "xdg-open", ...args] = openers[process.platform] ?? [];
  const opening = spawn(program, [...args, url], { stdio: "ignore", detached: true });
  opening.on("error", () =>
    printMessage("No browser could be started from here. Open the address yourself."),
  );
  opening.unref();
}

async function serve(args: readonly string[]): Promise<ExitCode> {
  const read = readArguments(args, options);
  const problem = read.ok ? null : read.error;
  if (!read.ok || read.value.positionals.length > 0) {
    printMessage(
      problem ??
        `serve takes no file; "${read.ok ? (read.value.positionals[0] ?? "") : ""}" is one word too many.`,
    );
    return exit.misuse;
  }
  const { values } = read.value;
  const port = readPort(values.port);
  if (port === null) {
    printMessage(`"${values.port ?? ""}" is not a port. Write a number from 0 to 65535 after --port.`);
    return exit.misuse;
  }
  const book = await MealBook.open(values.recipes ?? inProgram("recipes"));
  const server = await startServer({
    port,
    dataFolder: dataFolder(values.data),
    book,
    pageFolder: inProgram("dist/client"),
    modelsFolder: values.models === undefined ? inProgram("models") : resolve(values.models),
    tablesFolder: inProgram("recipes"),
    report: printMessage,
  });
  if (!server.ok) {
    printMessage(server.error);
    return exit.refused;
  }
  // Listening for them first: whoever reads the address may stop us at once.
  const stopped = Promise.race([once(process, "SIGINT"), once(process, "SIGTERM")]);
  printMessage("The kitchen is open. Its page, on this machine:");
  printData(server.value.url);
  if (values.open) openInBrowser(server.value.url);
  await stopped;
  await server.value.close();
  return exit.right;
}

/** `serve`: the server, until it is told to stop. */
export const serveCommand: CliCommand = {
  name: "serve",
  summary: "start the server and print its address",
  help,
  run: serve,
};
