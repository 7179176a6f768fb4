// What is wrong with a job is told at once, whichever stage finds it.
import { writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import { readJob } from "../../packages/casting-core/src/plan/grounds.js";
import { makePart, makePlan } from "../../packages/casting-core/src/plan/make.js";
import { casting, emptyFolder } from "../cli/support.js";

const PARTS = {
  blank: "{diameter: 400, radius: 3060}",
  pieces: "[{item: iso-4032-m12}, {shape: square, across: 25, thickness: 6, density: 2.35}]",
  plaster: "{fill: 32}",
};

/** A job with some of its parts written otherwise. */
function job(changes: Record<string, string>): string {
  return Object.entries({ ...PARTS, ...changes })
    .map(([key, value]) => `${key}: ${value}\n`)
    .join("");
}

/** The kind of the error and the keys it names; nothing where the plan comes as far as the layout. */
function told(changes: Record<string, string>, part?: "layout"): string[] {
  try {
    const read = readJob(job(changes));
    const laid = () => {
      throw new Error("laid");
    };
    if (part) makePart(read, part, { progress: laid });
    else makePlan(read, { progress: laid });
  } catch (error) {
    if ((error as Error).message === "laid") return [];
    if (!(error instanceof CastingError)) throw error;
    return [error.kind, ...error.faults.map(({ path }) => path.join("."))];
  }
  return [];
}

const BORE = "[{item: iso-4032-m12}, {shape: square, across: 25, bore: 40, thickness: 6, density: 2.35}]";
const FLOATS = "[{item: iso-4032-m12}, {shape: square, across: 25, thickness: 6, density: 1.2}]";
const DENTED = "{shape: polygon, points: [[0, 0], [9, 0], [3, 2], [0, 9]], thickness: 6, density: 2.4}";

describe("a job with faults that different stages find", () => {
  it.each([
    [
      "a piece without a wall, a low fill line",
      { pieces: BORE, plaster: "{fill: 8}" },
      ["invalid", "pieces.1.bore", "plaster.fill"],
    ],
    [
      "a piece without a wall, bad water",
      { pieces: BORE, plaster: "{water: 5}" },
      ["invalid", "pieces.1.bore", "plaster.water"],
    ],
    [
      "a dented polygon, bad water, a low fill line",
      { pieces: DENTED, plaster: "{water: 5, fill: 2}" },
      ["invalid", "plaster.water", "plaster.fill", "pieces.points"],
    ],
    ["a title, a piece that floats", { pieces: FLOATS, title: "[a]" }, ["invalid", "title", "pieces.1.density"]],
    [
      "pieces that float, a set-up that falls off",
      { pieces: FLOATS, setup: "{offset: 300}" },
      ["impossible", "pieces.1.density", "setup.offset"],
    ],
    [
      "two pieces that float",
      { pieces: FLOATS.replace("item: iso-4032-m12", "shape: round, diameter: 9, thickness: 6, density: 1.2") },
      ["impossible", "pieces.0.density", "pieces.1.density"],
    ],
    [
      "a blank of no size, a low fill line",
      { blank: "{diameter: wide, radius: 3060}", plaster: "{fill: 8}" },
      ["invalid", "blank.diameter", "plaster.fill"],
    ],
    [
      "units, a piece without a wall",
      {
        units: "inn",
        pieces: "{shape: square, across: 1, bore: 2, thickness: 1/4, density: 2.35}",
        blank: "{diameter: 12, radius: 100}",
        plaster: "{}",
      },
      ["invalid", "units", "pieces.bore"],
    ],
    [
      "shares, a piece without a wall",
      { pieces: BORE.replaceAll("}", ", share: 70%}") },
      ["invalid", "pieces", "pieces.1.bore"],
    ],
    [
      "an unknown item, a piece larger than the tool",
      { pieces: "[{item: iso-4032-m13}, {shape: square, across: 320, thickness: 6, density: 2.35}]" },
      ["invalid", "pieces.0.item", "pieces.1.across"],
    ],
    [
      "a mistyped shape, its size",
      { pieces: "{shape: sqare, across: x, thickness: 6, density: 2.35}" },
      ["invalid", "pieces.shape", "pieces.across"],
    ],
    [
      "a target of a flat that is given twice",
      { blank: "{diameter: 400, curve: wavy, radius: 3060, target: {}}" },
      ["invalid", "blank.curve", "blank.target"],
    ],
  ] as [string, Record<string, string>, string[]][])("tells all of them: %s", (_, changes, wanted) => {
    expect(told(changes).sort()).toEqual([...wanted].sort());
  });

  it.each([
    [
      "a tool wider than the blank, whose set-up then falls off",
      { tool: "{diameter: 500}", setup: "{offset: 100}" },
      ["invalid", "tool.diameter"],
    ],
    [
      "a thickness that was not read, below the fill line or not",
      { pieces: "{shape: square, across: 25, thickness: x, density: 2.35}", plaster: "{fill: 8}" },
      ["invalid", "pieces.thickness"],
    ],
    [
      "a dome of no size, which may rise through the fill line",
      { blank: "{diameter: wide, radius: 3060, curve: convex}", plaster: "{fill: 8}" },
      ["invalid", "blank.diameter"],
    ],
    ["a socket wider than the tool", { socket: "{diameter: 310, length: 40}" }, ["invalid", "socket.diameter"]],
    ["a set-up that is not the job's own", { tool: "{diameter: 400}", title: "[a]" }, ["invalid", "title"]],
    [
      "a custom plaster without its figures",
      { plaster: "{kind: custom}" },
      ["invalid", "plaster.water", "plaster.density"],
    ],
    [
      "a custom plaster without its density, a low fill line",
      { plaster: "{kind: custom, water: 0.3, fill: 8}" },
      ["invalid", "plaster.density", "plaster.fill"],
    ],
  ] as [string, Record<string, string>, string[]][])("tells nothing that only follows: %s", (_, changes, wanted) => {
    expect(told(changes)).toEqual(wanted);
  });

  it("tells nothing of the pour to who asks for the layout alone", () => {
    expect(told({ pieces: FLOATS, plaster: "{fill: 8}" }, "layout")).toEqual([]);
    expect(told({ pieces: BORE, plaster: "{fill: 8}" }, "layout")).toEqual(["invalid", "pieces.1.bore"]);
  });

  it("tells them in the order of the file", async () => {
    const file = `${emptyFolder()}/job.yaml`;
    writeFileSync(file, `plaster: {fill: 8}\n${job({ pieces: BORE }).replace(/plaster.*\n/, "")}`);
    const { code, err } = await casting("make", file, "--dry-run");
    expect(code).toBe(2);
    expect(err.match(/:\d+:\d+: [\w.[\]]+/g)).toEqual([":1:11: plaster.fill", ":3:60: pieces[1].bore"]);
  });
});
