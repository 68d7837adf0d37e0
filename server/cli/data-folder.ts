const defaultDataFolder = "var";

/** What `--help` says of `--data`. */
export const dataFolderHelp = `the folder of the meal log; $STOVECALL_DATA or ${defaultDataFolder} unless given`;

/** Where the meal log lies. @param named behind --data */
export const dataFolder = (named: string | undefined): string =>
  named ?? process.env["STOVECALL_DATA"] ?? defaultDataFolder;
