// Compiles the bed to WebAssembly and writes it as a module that the core imports: `src/layout/bed-code.ts`.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";

const here = (path) => new URL(path, import.meta.url);
const OUT = here("../src/layout/bed-code.ts");

const sources = [...readdirSync(here(".")), "../src/arc.ts", "../src/layout/ring-numbers.ts"];
const hash = createHash("sha256");
for (const name of sources.sort()) hash.update(readFileSync(here(name)));
const mark = `// from ${hash.digest("hex")}\n`;
// Compiling takes seconds: only what has changed is compiled again.
if (existsSync(OUT) && readFileSync(OUT, "utf8").startsWith(mark)) process.exit(0);

const { default: asc } = await import("assemblyscript/asc");
const args = [
  "bed/index.ts",
  ...["--outFile", "bed.wasm", "-O3", "--runtime", "stub"],
  // Indices are the loops' own, and nothing outside the file is called: no checks, no imports.
  ...["--uncheckedBehavior", "always", "--noAssert", "--enable", "simd", "--use", "abort="],
  // `!` after an index is TypeScript's need in the file that both compile (src/arc.ts).
  ...["--disableWarning", "210"],
];
let code;
const { error, stdout, stderr } = await asc.main(args, {
  baseDir: here("..").pathname,
  writeFile: (name, contents) => {
    if (name === "bed.wasm") code = contents;
  },
});
process.stdout.write(stdout.toString());
process.stderr.write(stderr.toString());
if (error || code === undefined) process.exit(1);
writeFileSync(
  OUT,
  `${mark}/** The bed of \`packages/casting-core/bed\` as WebAssembly, in base 64; written by its build. */
export const BED_CODE =
  "${Buffer.from(code).toString("base64")}";
`,
);
