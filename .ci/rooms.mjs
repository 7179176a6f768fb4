/** What is mutated in each room of the core, and the tests that must notice. */
export const ROOMS = {
  units: { mutate: ["units/**/*.ts"], tests: ["units/*", "outside/units", "job/read"] },
  geometry: { mutate: ["geometry/**/*.ts"], tests: ["geometry/*", "outside/geometry", "pieces/*", "grooves/area"] },
  check: { mutate: ["layout/check.ts"], tests: ["layout/*"] },
  pour: { mutate: ["pour/**/*.ts"], tests: ["pour/*", "outside/gypsum", "outside/trade"] },
  grooves: { mutate: ["grooves/**/*.ts"], tests: ["grooves/*"] },
};
