// The machine's own Chromium, driven by playwright-core.
import { accessSync } from "node:fs";
import { chromium } from "playwright-core";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/** A headless browser; throws with the remedy where there is none. */
export async function openBrowser() {
  const executablePath = PLACES.find((place) => {
    try {
      accessSync(place);
      return true;
    } catch {
      return false;
    }
  });
  if (!executablePath) throw new Error("no Chromium on this machine; install the package chromium");
  return await chromium.launch({
    executablePath,
    args: ["--no-sandbox", "--disable-gpu", "--force-color-profile=srgb"],
  });
}
