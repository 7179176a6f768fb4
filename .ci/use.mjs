// Loaded into a process by --import: as it ends it writes its processor time in ms and its greatest memory in bytes, as
// JSON, to the handle that USE_HANDLE names.
import { writeSync } from "node:fs";

const handle = Number(process.env.USE_HANDLE);
process.on("exit", () => {
  const { user, system } = process.cpuUsage();
  const used = { ms: (user + system) / 1000, bytes: process.resourceUsage().maxRSS * 1024 };
  writeSync(handle, JSON.stringify(used));
});
