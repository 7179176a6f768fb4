// Compiles what is written in AssemblyScript to WebAssembly, each folder into a module that the core imports.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";

const FOLDERS = [
  { folder: "bed", shared: ["src/arc.ts", "src/layout/quality/ring-numbers.ts"], out: "src/layout/laying/bed-code.ts" },
  { folder: "channels", shared: ["src/arc.ts"], out: "src/grooves/area/channels-code.ts" },
  { folder: "wear", shared: ["src/arc.ts"], out: "src/layout/quality/wear-code.ts" },
  {
    folder: "labels",
    shared: ["src/arc.ts", "channels/near.ts", "channels/strips.ts"],
    out: "src/drawing/labels-code.ts",
  },
];

const here = (path) => new URL(path, import.meta.url);

for (const { folder, shared, out } of FOLDERS) {
  const sources = readdirSync(here(folder)).map((name) => `${folder}/${name}`);
  const hash = createHash("sha256");
  for (const name of ["compile.mjs", ...sources.sort(), ...shared]) hash.update(readFileSync(here(name)));
  const mark = `// from ${hash.digest("hex")}\n`;
  // Compiling takes seconds: only what has changed is compiled again.
  if (existsSync(here(out)) && readFileSync(here(out), "utf8").startsWith(mark)) continue;
  const code = Buffer.from(await compiled(folder)).toString("base64");
  writeFileSync(
    here(out),
    `${mark}/** What \`packages/casting-core/${folder}\` is compiled to, WebAssembly in base 64; written by the build. */
export const ${folder.toUpperCase()}_CODE =
  "${code}";
`,
  );
}

/** The WebAssembly of a folder. */
async function compiled(folder) {
  const { default: asc } = await import("assemblyscript/asc");
  const args = [
    `${folder}/index.ts`,
    ...["--outFile", "code.wasm", "-O3", "--runtime", "stub"],
    // Indices are the loops' own, and nothing outside the file is called: no checks, no imports.
    ...["--uncheckedBehavior", "always", "--noAssert", "--enable", "simd", "--use", "abort="],
    // `!` after an index is TypeScript's need in the file that both compile (src/arc.ts).
    ...["--disableWarning", "210"],
  ];
  let code;
  const { error, stdout, stderr } = await asc.main(args, {
    baseDir: here(".").pathname,
    writeFile: (name, contents) => {
      if (name === "code.wasm") code = contents;
    },
  });
  process.stdout.write(stdout.toString());
  process.stderr.write(stderr.toString());
  if (error || code === undefined) process.exit(1);
  return code;
}
