const core = (...paths) => paths.map((path) => `packages/casting-core/src/${path}`);
const cli = (...paths) => paths.map((path) => `packages/casting-cli/src/${path}`);

/** What is mutated in each room, and the tests that must notice. */
export const ROOMS = {
  units: { mutate: core("units/**/*.ts"), tests: ["units/*", "outside/units", "job/read"] },
  geometry: { mutate: core("geometry/**/*.ts"), tests: ["geometry/*", "outside/geometry", "pieces/*", "grooves/area"] },
  check: { mutate: core("layout/check.ts"), tests: ["layout/check"] },
  pour: {
    mutate: core("pour/**/*.ts"),
    tests: [
      "pour/{container,container-text,figures,heat,mold,notes,sentences,without-job}",
      "outside/gypsum",
      "outside/trade",
    ],
  },
  grooves: {
    mutate: core(
      "grooves/{floor,notes,notes-network,outlets,polyline}.ts",
      "grooves/area/{area,channels}.ts",
      "grooves/cuts/{cuts,matching,pairing,retrace,room,uncut}.ts",
      "grooves/network/graph.ts",
    ),
    tests: ["grooves/{parts,pairing,retrace,notes,optimal}"],
  },
  network: {
    mutate: core(
      "grooves/plan.ts",
      "grooves/cuts/{choice,mains,toolpath}.ts",
      "grooves/network/{bisector,junctions,mesh,middle,network,sites,ways}.ts",
    ),
    tests: ["grooves/{bisector,edge,junctions,lines,mains,mesh,middle,sites,small,toolpath,ways}"],
  },
  writers: {
    mutate: core("drawing/{svg,dxf,dxf-file,retainer,retainer-dxf,csv}.ts", "plan/json.ts"),
    tests: ["drawing/{svg,dxf,csv,retainer}", "plan/json"],
  },
  files: { mutate: cli("files/**/*.ts"), tests: ["cli/{files,leftovers}"] },
  pdf: { mutate: cli("pdf/*.ts"), tests: ["drawing/{cover,pdf}"] },
  command: {
    mutate: cli("*.ts", "commands/*.ts", "report/*.ts", "view/*.ts"),
    tests: ["cli/{help,jobs,options,report,run,terminal,view}"],
  },
};
