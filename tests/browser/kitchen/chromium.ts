import { chromium, type Browser } from "playwright-core";
import { findChromium } from "../../../tools/system-packages.ts";

/** What the browser is given for a microphone: a recording that is read once, a device that beeps, or one it may refuse. */
export type FakeMicrophone = { readonly wav: string } | "device" | "refused";

const quiet = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Starts Chromium with its own rules for sound: a page is silent before a touch. */
export async function startChromium(microphone: FakeMicrophone): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium() ?? "/usr/bin/chromium",
    args: [
      ...quiet,
      "--autoplay-policy=document-user-activation-required",
      ...microphoneArguments(microphone),
    ],
  });
}

function microphoneArguments(microphone: FakeMicrophone): readonly string[] {
  if (microphone === "refused") return ["--use-fake-device-for-media-stream"];
  const fake = ["--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream"];
  // The file is read from its beginning when the page opens the microphone, once, in real time.
  return microphone === "device"
    ? fake
    : [...fake, `--use-file-for-fake-audio-capture=${microphone.wav}%noloop`];
}
