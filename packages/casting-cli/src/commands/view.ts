import { watch } from "node:fs";
import { basename, dirname } from "node:path";
import { FileError, reason } from "../files/errors.js";
import { svgDrawer } from "../outputs.js";
import { onInterrupt, safe, type Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { JobView } from "../view/job-view.js";
import { serve } from "../view/server.js";

/** Exit code after Ctrl-C. */
const INTERRUPTED = 130;
/** A saved file is often written in several steps; its change is looked at when it rests, ms. */
const REST = 150;

/** `casting view`: a live page of a job, until Ctrl-C. */
export async function view(file: string, options: { port?: string }, terminal: Terminal): Promise<number> {
  if (file === "-") throw usage("a live view needs a job file that can change; name one");
  const port = portOf(options.port);
  const page = new JobView(file, await svgDrawer());
  const running = await serve(page, port).catch((error: unknown) => {
    throw new FileError(`port ${port} cannot be used: ${reason(error)}; give another with --port, or none`);
  });
  let rest: NodeJS.Timeout | undefined;
  const name = basename(file);
  // The folder is watched, since editors put a new file in the old one's place.
  const watcher = watch(dirname(file), (_, changed) => {
    if (changed !== null && changed !== name) return;
    clearTimeout(rest);
    rest = setTimeout(() => {
      if (page.reread()) running.changed();
    }, REST);
  });
  page.onShown = () => running.changed();
  terminal.out(`${running.url}\nshows ${safe(file)} and follows its changes; Ctrl-C ends it.\n`);
  await onInterrupt();
  clearTimeout(rest);
  watcher.close();
  running.close();
  return INTERRUPTED;
}

function portOf(text: string | undefined): number {
  if (text === undefined) return 0;
  if (/^\d{1,5}$/.test(text) && Number(text) <= 65_535) return Number(text);
  throw usage(`--port ${text.slice(0, 40)} is not a port; write a number from 1 to 65535`);
}
