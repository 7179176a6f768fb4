import { readdirSync } from "node:fs";
import Flatten from "@flatten-js/core";
import type { Plan } from "casting-core";
import { describe, expect, it } from "vitest";
import { casting, contents, emptyFolder } from "./support.js";

const JOBS = readdirSync("fixtures").filter((name) => name.endsWith(".yaml"));

/** Least distance between any two pieces near each other, by another library. */
function leastGap({ layout }: Plan): number {
  const shapes = layout.pieces.map(({ x, y, radius, outline }) =>
    radius === undefined ? new Flatten.Polygon(outline) : new Flatten.Circle(new Flatten.Point(x, y), radius),
  );
  let least = Infinity;
  layout.pieces.forEach((a, i) => {
    for (let j = i + 1; j < layout.pieces.length; j++) {
      const b = layout.pieces[j]!;
      if (Math.hypot(a.x - b.x, a.y - b.y) > 70) continue;
      least = Math.min(least, shapes[i]!.distanceTo(shapes[j]!)[0]);
    }
  });
  return least;
}

describe.each(JOBS)("%s", (name) => {
  it("is made whole, and its files say what its plan says", async () => {
    const folder = emptyFolder();
    const { code, err } = await casting("make", `fixtures/${name}`, "--out", folder, "--force", "--quiet");
    expect(err).toBe("");
    expect(code).toBe(0);
    const files = contents(folder);
    const plan = JSON.parse(files["plan.json"]!) as Plan;
    const { layout, pour, tool, grooves } = plan;
    expect(leastGap(plan)).toBeGreaterThanOrEqual(layout.gap + layout.hand - 1e-6);
    expect(layout.quality.count).toBe(layout.pieces.length);
    expect(pour.castVolume).toBeCloseTo(pour.moldVolume - pour.piecesVolume - pour.socketVolume, 6);
    expect(pour.batches.reduce((sum, batch) => sum + batch.mix, 0)).toBeCloseTo(pour.mixVolume, 6);
    expect(grooves.edges.filter((edge) => !edge.cut)).toHaveLength(grooves.totals.uncut);

    const drawn = [...files["placement.svg"]!.matchAll(/data-piece="(\d+)"/g)].map((match) => Number(match[1]));
    expect(drawn).toEqual(layout.pieces.map((piece) => piece.id));
    expect(files["pieces.csv"]!.split("\r\n")).toHaveLength(layout.pieces.length + 2);
    for (const [file, text] of Object.entries(files)) {
      expect(`${file}: ${/NaN|undefined|Infinity|\[object/.exec(text)?.[0] ?? ""}`).toBe(`${file}: `);
      if (!file.endsWith(".svg")) continue;
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 \1 \2"/.exec(text)!;
      expect(Number(width)).toBeGreaterThan(file.startsWith("gauge") ? 200 : tool.diameter);
      expect(Number(height)).toBeGreaterThan(100);
      expect(text).toMatch(/id="scale-check"/);
    }
  }, 60_000);
});
