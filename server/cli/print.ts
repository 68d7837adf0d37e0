/** The result of a command, on the standard output, where another program may read it. */
export function printData(text: string): void {
  console.log(text);
}

/** What the person should know, on the standard error. */
export function printMessage(text: string): void {
  console.error(text);
}
