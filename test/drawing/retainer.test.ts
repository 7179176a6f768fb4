// The retainer's sheet, shape by shape: a ring of 402 and 462 mm round a blank of 400 mm.
import { describe, expect, it } from "vitest";
import { holeCentres, retainerSheet, slotSides } from "../../packages/casting-core/src/drawing/retainer.js";
import { DASHED, FIRM, type Shape, THIN } from "../../packages/casting-core/src/drawing/sheet.js";
import type { Plan } from "../../packages/casting-core/src/plan/types.js";
import { exampleJob } from "../support/jobs.js";

const retainer: Plan["setup"]["retainer"] = {
  inside: 402,
  outside: 462,
  height: 20.046,
  low: false,
  clearance: 1,
  eccentricity: 1,
  cushion: 3,
  slots: { count: 4, width: 20 },
  holes: { count: 3, diameter: 6, circle: 440 },
};
const sheetOf = (given: boolean, changes: Partial<typeof retainer> = {}) => {
  const job = exampleJob();
  return retainerSheet({
    generator: { name: "casting", version: "0" },
    job: { ...job, setup: { ...job.setup, given } },
    blank: { diameter: 400 },
    layout: { seed: 1 },
    tool: { diameter: 300 },
    setup: { retainer: { ...retainer, ...changes } },
  } as Plan);
};
/** A group of the whole sheet. */
const groupOf = (name: string) => sheetOf(true)!.groups.find(({ id }) => id === name)!.shapes;

/** A circle or a line to 1 nm, about the ring's centre, y up. */
function drawn(shape: Shape): unknown[] {
  const round = ([x, y]: readonly [number, number]) =>
    [x - 243, 243 - y].map((value) => Math.round(value * 1e6) / 1e6 + 0);
  if (shape.kind === "circle") return [...round(shape.centre), shape.radius, shape.style];
  if (shape.kind === "polyline") return [...shape.points.flatMap(round), shape.style, ...(shape.aid ? ["aid"] : [])];
  throw new Error(shape.kind);
}

describe("the retainer's sheet", () => {
  it("is as large as its ring in its margins, the block below it, and no narrower than that", () => {
    const sheet = sheetOf(true)!;
    expect([sheet.width, sheet.bodyHeight, sheet.height]).toEqual([486, 486, 597.6]);
    expect([sheet.name, sheet.caption]).toEqual(["retainer", "retainer for the turntable"]);
    expect(sheet.groups.map(({ id }) => id)).toEqual(["marks", "labels", "scale-check"]);
    expect(groupOf("scale-check")).toHaveLength(4);
    const small = sheetOf(true, { inside: 82, outside: 132 })!;
    expect([small.width, small.bodyHeight]).toEqual([209.6, 156]);
    expect(small.groups[0]!.shapes[0]).toMatchObject({ centre: [104.8, 78], radius: 66 });
    expect(sheetOf(false)).toBeUndefined();
  });

  it("has ring, slots, holes with their crosses, the blank and the middle, in this order", () => {
    const holes = [60, 180, 300].flatMap((turn) => {
      const [x, y] = [Math.cos((turn * Math.PI) / 180) * 220, Math.sin((turn * Math.PI) / 180) * 220].map(
        (value) => Math.round(value * 1e6) / 1e6 + 0,
      );
      const near = (value: number) => expect.closeTo(value, 5);
      return [
        [x, y, 3, FIRM],
        [near(x! - 2), y, near(x! + 2), y, THIN],
        [x, near(y! + 2), x, near(y! - 2), THIN],
      ];
    });
    const slots = slotSides(retainer).map((ends) => [
      ...ends.flat().map((value) => Math.round(value * 1e6) / 1e6 + 0),
      FIRM,
    ]);
    expect(groupOf("marks").map(drawn)).toEqual([
      [0, 0, 231, FIRM],
      [0, 0, 201, FIRM],
      ...slots,
      ...holes,
      [0, 0, 200, DASHED],
      [-4, 0, 4, 0, THIN, "aid"],
      [0, 4, 0, -4, THIN, "aid"],
    ]);
  });

  it("tells its figures, which way up it is, and what it is for", () => {
    expect(sheetOf(true)!.facts).toEqual([
      "RETAINER for the turntable, seen from above: it keeps the blank in the middle and never pinches it.",
      "Inside 402 mm, outside 462 mm, 20.04 mm high with 3 mm of cushion; the blank (dashed) is loose by 1 mm all round, off centre by at most that.",
      "4 slots of 20 mm from floor to top for water and grit; 3 holes of 6 mm on a circle of 440 mm.",
    ]);
    expect(groupOf("labels").length).toBeGreaterThan(5);
  });
});

describe("the retainer's slots and holes", () => {
  it("lie half the slot's width to either side of lines from the centre, and half way between those", () => {
    const [first, second, third] = slotSides(retainer);
    const [inner, outer] = [Math.sqrt(201 * 201 - 100), Math.sqrt(231 * 231 - 100)];
    expect(first!.flat()).toEqual([inner, 10, outer, 10].map((value) => expect.closeTo(value, 9)));
    expect(second!.flat()).toEqual([inner, -10, outer, -10].map((value) => expect.closeTo(value, 9)));
    expect(third!.flat()).toEqual([-10, inner, -10, outer].map((value) => expect.closeTo(value, 9)));
    expect(holeCentres(retainer).flat()).toEqual(
      [110, 220 * Math.sin(Math.PI / 3), -220, 0, 110, -220 * Math.sin(Math.PI / 3)].map((value) =>
        expect.closeTo(value, 9),
      ),
    );
  });
});
