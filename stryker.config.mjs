// One room at a time: npm run mutate (see .ci/mutate.mjs) says which by ROOM.
import { ROOMS } from "./.ci/rooms.mjs";

const room = process.env.ROOM ?? "units";

export default {
  packageManager: "npm",
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "vitest.mutate.config.ts" },
  mutate: [...ROOMS[room].mutate.map((path) => `packages/casting-core/src/${path}`), "!**/*.d.ts"],
  ignorePatterns: ["dist", "out", "reference", "reports"],
  coverageAnalysis: "perTest",
  concurrency: 2,
  timeoutMS: 20_000,
  thresholds: { high: 95, low: 92, break: null },
  reporters: ["clear-text", "json", "html"],
  clearTextReporter: { logTests: false, allowColor: false },
  jsonReporter: { fileName: `reports/${room}.json` },
  htmlReporter: { fileName: `reports/${room}.html` },
};
