import { describe, expect, it } from "vitest";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import { ontoBisector, ontoJunction } from "../../packages/casting-core/src/grooves/bisector.js";
import { distanceTo, type Site } from "../../packages/casting-core/src/grooves/sites.js";

const piece = (outline: Outline): Site => ({ kind: "piece", shapes: [{ form: "outline", outline }] });
const EDGE: Site = { kind: "rim", shapes: [{ form: "hollow", radius: 67.9109125 }] };

// Two triangles whose corners stand 5 µm apart near the tool's edge: from seed 2100 of the random jobs.
const ONE = piece([
  [-0.092, 64.51],
  [-26.606, 58.763],
  [-8.372, 38.676],
]);
const OTHER = piece([
  [-26.61, 58.766],
  [-48.416, 42.628],
  [-23.536, 31.812],
]);

describe("The point equally far from three sites", () => {
  it("is found between corners that all but touch, where a whole step of Newton's goes far beyond it", () => {
    const found = ontoJunction([-27.177, 60.368], ONE, OTHER, EDGE, 1.7);
    const [a, b, c] = [ONE, OTHER, EDGE].map((site) => distanceTo(site, found));
    expect(a).toBeCloseTo(b!, 9);
    expect(a).toBeCloseTo(c!, 9);
    expect(found[0]).toBeCloseTo(-26.8645, 3);
    expect(found[1]).toBeCloseTo(60.4801, 3);
  });

  it("is the start where there is none within reach", () => {
    const start: Point = [-27.177, 60.368];
    expect(ontoJunction(start, ONE, OTHER, EDGE, 0.1)).toEqual(start);
  });
});

describe("The point equally far from two sites", () => {
  it("lies straight beside the start", () => {
    const left = piece([
      [-3, -5],
      [-1, -5],
      [-1, 5],
      [-3, 5],
    ]);
    const right = piece([
      [2, -5],
      [4, -5],
      [4, 5],
      [2, 5],
    ]);
    const [x, y] = ontoBisector([0.1, 1], left, right);
    expect(x).toBeCloseTo(0.5, 9);
    expect(y).toBeCloseTo(1, 9);
  });
});
