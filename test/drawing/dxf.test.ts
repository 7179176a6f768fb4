import { describe, expect, test } from "vitest";
import { groovesDxf } from "../../packages/casting-core/src/drawing/dxf.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, toolOf } from "../support/layouts.js";

const layout = jittered(1, 150, 26, 4);
const tool = toolOf(150);

function drawn(title = "Coarse tool"): string {
  const job = exampleJob({ title });
  const grooves = planGrooves(job, tool, [], layout);
  return groovesDxf({ generator: { name: "casting", version: "0.1.0" }, job, tool, layout, grooves });
}

/** Group codes and values of a DXF text. */
function groups(text: string): [number, string][] {
  const lines = text.split("\n").map((line) => line.replace(/\r$/, ""));
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}

/** Entities of one type on one layer, each as its groups. */
function entities(text: string, type: string, layer: string): [number, string][][] {
  const found: [number, string][][] = [];
  let current: [number, string][] | undefined;
  for (const group of groups(text)) {
    if (group[0] === 0) {
      current = group[1] === type ? [] : undefined;
      if (current) found.push(current);
    }
    current?.push(group);
  }
  return found.filter((entity) => entity.some(([code, value]) => code === 8 && value === layer));
}

describe("grooves.dxf", () => {
  const text = drawn();

  test("is of AC1021, in millimetres", () => {
    const all = groups(text);
    const follows = (name: string): string => all[all.findIndex(([, value]) => value === name) + 1]![1];
    expect(follows("$ACADVER") >= "AC1015").toBe(true);
    expect(follows("$INSUNITS")).toBe("4");
    expect(text.trimEnd().endsWith("EOF")).toBe(true);
  });

  test("holds every edge and piece once, mirrored left to right, rounds as true circles", () => {
    const grooves = planGrooves(exampleJob(), tool, [], layout);
    const cut = grooves.edges.filter((edge) => edge.cut);
    const channels = entities(text, "LWPOLYLINE", "CHANNELS");
    expect(channels.length).toBe(cut.length);
    expect(entities(text, "LWPOLYLINE", "UNCUT").length).toBe(grooves.totals.uncut);
    channels.forEach((entity, i) => {
      const xs = entity.filter(([code]) => code === 10).map(([, value]) => Number(value));
      const ys = entity.filter(([code]) => code === 20).map(([, value]) => Number(value));
      expect(xs.map((x) => (x === 0 ? 0 : -x))).toEqual(cut[i]!.points.map(([x]) => x));
      expect(ys).toEqual(cut[i]!.points.map(([, y]) => y));
    });
    const rounds = layout.pieces.filter((piece) => piece.radius !== undefined);
    expect(rounds.length).toBeGreaterThan(0);
    expect(entities(text, "CIRCLE", "PIECES").length).toBe(rounds.length);
    expect(entities(text, "LWPOLYLINE", "PIECES").length).toBe(layout.pieces.length - rounds.length);
    expect(entities(text, "CIRCLE", "TOOL_EDGE").length).toBe(1);
  });

  test("is the same text each time, numbers without exponents or minus zero", () => {
    expect(drawn()).toBe(text);
    for (const [code, value] of groups(text)) {
      if (code >= 10 && code < 60) expect(value).not.toMatch(/e|NaN|Infinity|^-0$/);
    }
  });

  test.each([
    ["back\\slash", "back\\U+005Cslash"],
    ["care^t", "care^ t"],
    ["100 %, 50%% off", "100 %, 50%%%%%% off"],
    ["line\nbreak", "line break"],
    ["Größe ½″", "Größe ½″"],
  ])("shows the title %j as it is", (title, value) => {
    expect(groups(drawn(title)).some(([code, text]) => code === 1 && text === value)).toBe(true);
  });

  test("shortens a title that no reader would take", () => {
    const values = groups(drawn("\\".repeat(10_000))).filter(([code]) => code === 1);
    for (const [, value] of values) expect(value.length).toBeLessThanOrEqual(255);
    expect(values.some(([, value]) => value.endsWith("…"))).toBe(true);
  });
});
