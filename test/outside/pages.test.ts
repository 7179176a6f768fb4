// Page sizes and the units of print, against their standards.
import { expect, test } from "vitest";
import { templatesPdf } from "../../packages/casting-cli/src/pdf/templates.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { PAPERS, paperNamed } from "../../packages/casting-core/src/papers.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

test("A sizes halve, rounded down, from a square metre of 1 : √2 (ISO 216)", () => {
  let [height, width] = [1189, 841];
  expect((width * height) / 1e6).toBeCloseTo(1, 3);
  expect(height / width).toBeCloseTo(Math.SQRT2, 3);
  for (const name of ["A0", "A1", "A2", "A3", "A4"]) {
    expect(paperNamed(name)).toMatchObject({ width, height });
    [height, width] = [width, Math.floor(height / 2)];
  }
});

test("US sizes in inches (ANSI/ASME Y14.1; Legal: common practice)", () => {
  const inches = { Letter: [8.5, 11], Legal: [8.5, 14], Tabloid: [11, 17] } as const;
  for (const [name, [width, height]] of Object.entries(inches)) {
    const paper = PAPERS.find((row) => row.name === name)!;
    expect(paper.width / 25.4).toBeCloseTo(width, 12);
    expect(paper.height / 25.4).toBeCloseTo(height, 12);
  }
});

const JOB = "blank: {diameter: 150, radius: 1200}\npieces: {item: iso-4032-m10}\n";

test("pages of a PDF in points of 1/72 in: A4 is 595.28 x 841.89 (ISO 32000-1, 14.11.2)", async () => {
  const pdf = Buffer.from(await templatesPdf(makePlan(readJob(JOB)), false)).toString("latin1");
  const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map((box) => [
    Number(box[1]),
    Number(box[2]),
  ]);
  expect(boxes.length).toBeGreaterThan(3);
  for (const box of boxes) {
    const [short, long] = box.sort((a, b) => a - b);
    expect(short).toBeCloseTo(595.28, 1);
    expect(long).toBeCloseTo(841.89, 1);
  }
  expect(pdf).toContain("/PrintScaling /None");
});

test("a dam's strip is π times what it goes round, and its overlap (geometry)", () => {
  const { dam } = makePlan(readJob(JOB)).pour;
  expect(dam.length).toBeCloseTo(Math.PI * (112.5 + 1) + 40, 9);
});

test("a CSS inch is 96 px, so a sheet's millimetre is 3.7795 px (CSS Values and Units 3, 6.2)", () => {
  expect(96 / 25.4).toBeCloseTo(3.7795, 4);
});
