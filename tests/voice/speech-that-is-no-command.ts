import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * Recordings of people who command no kitchen: Debian's pocketsphinx-testdata (read novels, digits, cards) and the
 * prompts of asterisk-core-sounds-en-wav (one speaker, several hundred phrases).
 */
const folders = ["/usr/share/pocketsphinx/test/data", "/usr/share/asterisk/sounds/en_US_f_Allison"] as const;

/** Paths of all of them that are installed, WAV or raw 16 kHz, in order. */
export function speechThatIsNoCommand(): readonly string[] {
  return folders.filter(existsSync).flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(wav|raw)$/.test(name))
      .sort()
      .map((name) => join(folder, name)),
  );
}

/** Bytes of a WAV file for any of them: the raw ones (16-bit, 16 kHz, mono) get a header. */
export function asWav(path: string): Uint8Array {
  const sound = readFileSync(path);
  if (!path.endsWith(".raw")) return sound;
  const header = Buffer.alloc(44);
  header.write("RIFF", 0);
  header.writeUInt32LE(36 + sound.length, 4);
  header.write("WAVEfmt ", 8);
  header.writeUInt32LE(16, 16);
  header.writeUInt16LE(1, 20);
  header.writeUInt16LE(1, 22);
  header.writeUInt32LE(16_000, 24);
  header.writeUInt32LE(32_000, 28);
  header.writeUInt16LE(2, 32);
  header.writeUInt16LE(16, 34);
  header.write("data", 36);
  header.writeUInt32LE(sound.length, 40);
  return Buffer.concat([header, sound]);
}
