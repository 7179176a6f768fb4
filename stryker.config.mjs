// One room at a time: npm run mutate (see .ci/mutate.mjs) says which by ROOM; WORKERS=1 leaves a processor to others.
import { ROOMS } from "./.ci/rooms.mjs";

const room = process.env.ROOM ?? "units";

export default {
  packageManager: "npm",
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "vitest.mutate.config.ts", related: false },
  mutate: [...ROOMS[room].mutate, "!**/*.d.ts"],
  ignorePatterns: ["dist", "out", "reference", "reports"],
  coverageAnalysis: "perTest",
  concurrency: Number(process.env.WORKERS ?? 2),
  timeoutMS: 20_000,
  thresholds: { high: 95, low: 92, break: null },
  reporters: ["clear-text", "json", "html"],
  clearTextReporter: { logTests: false, allowColor: false },
  jsonReporter: { fileName: `reports/${room}.json` },
  htmlReporter: { fileName: `reports/${room}.html` },
};
