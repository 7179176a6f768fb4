import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: {
    alias: { "casting-core": fileURLToPath(new URL("packages/casting-core/src/index.ts", import.meta.url)) },
  },
  test: { include: ["test/**/*.test.ts"], testTimeout: 60_000 },
});
