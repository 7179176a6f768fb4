import { readdirSync, readFileSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";

/** The rooms of the table in DEVELOPERS.md by their whole paths; `…` stands for the last source folder that was named. */
function rooms(): string[] {
  const page = readFileSync("DEVELOPERS.md", "utf8");
  const table = /^\| room[^\n]*\n[^\n]*\n((?:\|[^\n]*\n)+)/m.exec(page)![1]!;
  let source = "";
  return [...table.matchAll(/^\| `([^`]+)`/gm)].map(([, cell]) => {
    source = /^packages\/[\w-]+\/src/.exec(cell!)?.[0] ?? source;
    return cell!.replace("…", source);
  });
}

describe("the rooms' table for contributors", () => {
  it("names every folder of source", () => {
    const folders = readdirSync("packages").flatMap((name) => {
      const source = `packages/${name}/src`;
      const inside = readdirSync(source, { recursive: true, encoding: "utf8" });
      const within = inside.filter((path) => statSync(`${source}/${path}`).isDirectory());
      return within.map((path) => `${source}/${path.replaceAll("\\", "/")}`);
    });
    expect(folders.length).toBeGreaterThan(15);
    expect(folders.filter((folder) => !rooms().includes(folder))).toEqual([]);
  });

  it("names only what is there", () => {
    for (const room of rooms()) expect(`${room} ${statSync(room).isDirectory()}`).toBe(`${room} true`);
  });
});
