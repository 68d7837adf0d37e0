import { parseArgs, type ParseArgsConfig } from "node:util";
import { err, ok, type Result } from "../../core/units/result.ts";

/** How a command ended, as a shell understands it. */
export const exit = { right: 0, refused: 1, misuse: 2 } as const;
export type ExitCode = (typeof exit)[keyof typeof exit];

/** One command of the command line. */
export interface CliCommand {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** What `COMMAND --help` prints. */
  readonly help: string;
  /** Prints its own messages. @param args what follows the command's name */
  readonly run: (args: readonly string[]) => Promise<ExitCode>;
}

type Options = NonNullable<ParseArgsConfig["options"]>;
type Read<T extends Options> = ReturnType<
  typeof parseArgs<{ args: string[]; options: T; allowPositionals: true; strict: true }>
>;

function misuse(problem: unknown): string {
  const code = problem instanceof Error && "code" in problem ? String(problem.code) : "";
  const message = problem instanceof Error ? problem.message : String(problem);
  const option = /'(-[^' ]+)/.exec(message)?.[1] ?? "";
  switch (code) {
    case "ERR_PARSE_ARGS_UNKNOWN_OPTION":
      return `There is no option ${option}.`;
    case "ERR_PARSE_ARGS_INVALID_OPTION_VALUE":
      return message.includes("does not take")
        ? `${option} takes no value.`
        : `${option} needs a value after it.`;
    default:
      throw problem;
  }
}

/** "--servings -2" is a number below nought and no option without a value: joined, the command itself says what is wrong. */
const withNegatives = (args: readonly string[]): readonly string[] =>
  args.flatMap((arg, index) => {
    const isOption = (word: string | undefined): boolean => /^--[a-z-]+$/.test(word ?? "");
    if (/^-\d/.test(arg) && isOption(args[index - 1])) return [];
    const next = args[index + 1] ?? "";
    return isOption(arg) && /^-\d/.test(next) ? [`${arg}=${next}`] : [arg];
  });

/** Reads the words after a command's name. Error: one sentence about the word that is wrong. */
export function readArguments<const T extends Options>(
  args: readonly string[],
  options: T,
): Result<Read<T>, string> {
  try {
    return ok(parseArgs({ args: [...withNegatives(args)], options, allowPositionals: true, strict: true }));
  } catch (problem) {
    return err(misuse(problem));
  }
}
