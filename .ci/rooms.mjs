const core = (...paths) => paths.map((path) => `packages/casting-core/src/${path}`);
const cli = (...paths) => paths.map((path) => `packages/casting-cli/src/${path}`);

/** What is mutated in each room, and the tests that must notice. */
export const ROOMS = {
  units: { mutate: core("units/**/*.ts"), tests: ["units/*", "outside/units", "job/read"] },
  geometry: { mutate: core("geometry/**/*.ts"), tests: ["geometry/*", "outside/geometry", "pieces/*", "grooves/area"] },
  check: { mutate: core("layout/check.ts"), tests: ["layout/check"] },
  pour: { mutate: core("pour/**/*.ts"), tests: ["pour/*", "outside/gypsum", "outside/trade"] },
  grooves: { mutate: core("grooves/**/*.ts"), tests: ["grooves/*"] },
  writers: {
    mutate: core("drawing/{svg,dxf,dxf-file,retainer-dxf,csv}.ts", "plan/json.ts"),
    tests: ["drawing/svg", "drawing/dxf", "drawing/csv", "plan/json"],
  },
  files: { mutate: cli("files/**/*.ts"), tests: ["cli/files", "cli/crash"] },
  pdf: { mutate: cli("pdf/*.ts"), tests: ["drawing/pdf"] },
  command: { mutate: cli("*.ts", "commands/*.ts", "report/*.ts", "view/*.ts"), tests: ["cli/*"] },
};
