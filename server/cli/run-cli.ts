import { exit, type CliCommand, type ExitCode } from "./command.ts";
import { printData, printMessage } from "./print.ts";

const how = "npm run -s stovecall --";

function generalHelp(commands: readonly CliCommand[]): string {
  const width = Math.max(...commands.map(({ name }) => name.length));
  return [
    "Stovecall calls a meal of several dishes, step by step, aloud.",
    "",
    `Use: ${how} COMMAND …`,
    "",
    ...commands.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    "",
    `More about one: ${how} COMMAND --help`,
  ].join("\n");
}

/**
 * Finds the command that the words name and runs it.
 * @param words what was typed after the program's name
 */
export async function runCli(words: readonly string[], commands: readonly CliCommand[]): Promise<ExitCode> {
  const [name, ...args] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    printData(generalHelp(commands));
    return name === undefined ? exit.misuse : exit.right;
  }
  const command = commands.find((one) => one.name === name);
  if (command === undefined) {
    printMessage(`There is no command ${name}. There are: ${commands.map((one) => one.name).join(", ")}.`);
    return exit.misuse;
  }
  if (args.includes("--help") || args.includes("-h")) {
    printData(command.help);
    return exit.right;
  }
  return command.run(args);
}
