/** Hands a file to the browser, which puts it where the cook keeps downloads. Call it from a touch. */
export function saveFile(bytes: Uint8Array<ArrayBuffer>, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads it after this turn; a minute is long enough for 40 MB.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
