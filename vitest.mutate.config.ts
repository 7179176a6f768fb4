import { defineConfig } from "vitest/config";
import { ROOMS } from "./.ci/rooms.mjs";
import plain from "./vitest.config.js";

const room = (process.env["ROOM"] ?? "units") as keyof typeof ROOMS;

/** The tests of one room alone. */
export default defineConfig({
  ...plain,
  test: {
    ...plain.test,
    setupFiles: [".ci/end-on-failure.mjs"],
    include: ROOMS[room].tests.map((name) => `test/${name}.test.ts`),
  },
});
