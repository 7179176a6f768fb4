// The cases that the layout is measured on: hexagons, squares, rectangles, rounds and a mix in a 400 mm tool.
export const RIM = 3;

function kind(shape, outline, fold, changes = {}) {
  let twice = 0;
  outline.forEach(([ax, ay], c) => {
    const [bx, by] = outline[(c + 1) % outline.length];
    twice += ax * by - ay * bx;
  });
  const reach = Math.max(...outline.map(([x, y]) => Math.hypot(x, y)));
  return {
    kind: 0,
    name: shape,
    shape,
    outline,
    fold,
    reach,
    area: twice / 2,
    bore: 0,
    thickness: 6,
    density: 2.35,
    ...changes,
  };
}

const regular = (n, reach) =>
  Array.from({ length: n }, (_, c) => [
    reach * Math.cos((2 * Math.PI * c) / n),
    reach * Math.sin((2 * Math.PI * c) / n),
  ]);

export const hexagon = (across, changes) => kind("hexagon", regular(6, across / Math.sqrt(3)), 6, changes);

export const rectangle = (length, width, changes) =>
  kind(
    length === width ? "square" : "rectangle",
    [
      [-length / 2, -width / 2],
      [length / 2, -width / 2],
      [length / 2, width / 2],
      [-length / 2, width / 2],
    ],
    length === width ? 4 : 2,
    changes,
  );

export const round = (diameter, changes) =>
  kind("round", regular(96, diameter / 2), Number.POSITIVE_INFINITY, {
    radius: diameter / 2,
    reach: diameter / 2,
    area: (Math.PI * diameter * diameter) / 4,
    ...changes,
  });

export const CASES = [
  { name: "hexagons 20, gap 3", kinds: [hexagon(20)], diameter: 400, gap: 3 },
  { name: "squares 25, gap 3", kinds: [rectangle(25, 25)], diameter: 400, gap: 3 },
  { name: "rectangles 48 x 23, gap 3", kinds: [rectangle(48, 23)], diameter: 400, gap: 3 },
  { name: "rounds 25, gap 3", kinds: [round(25)], diameter: 400, gap: 3 },
  {
    name: "squares 25 (70 %) and 12, gap 2.5",
    kinds: [rectangle(25, 25, { share: 0.7 }), rectangle(12, 12, { kind: 1, share: 0.3 })],
    diameter: 400,
    gap: 2.5,
    // An ordered lattice of both, by area (layout issue).
    lattice: 205,
  },
];

// Best-known packings of equal circles in a circle: R/r (Graham, Lubachevsky, Nurmela and Östergård 1998; Grosso et al. 2008).
export const CIRCLES = [
  { ratio: 10.566772, best: 91 },
  { ratio: 15.463275, best: 200 },
];

export function jobOf(gap, seed) {
  return { layout: { gap, seed, hand: 0, count: "max", "keep-clear": [] } };
}
