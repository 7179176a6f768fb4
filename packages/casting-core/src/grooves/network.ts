import { farthest } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { hypot } from "../trig.js";
import { ontoBisector, ontoJunction } from "./bisector.js";
import { circumcentre, crosses, type Mesh, meshOf, next, third } from "./mesh.js";
import { along, between, lengthOf, rounded, simplified } from "./polyline.js";
import { distanceTo, type Shape, type Site, sampleSite } from "./sites.js";

/** The middle lines between all sites: the Voronoi diagram of whole outlines, within 0.01 mm of the true one. */
export interface Network {
  nodes: Point[];
  lines: MiddleLine[];
}

export interface MiddleLine {
  a: number;
  b: number;
  points: Point[];
  /** Indices of the two sites it runs between. */
  left: number;
  right: number;
}

/** Most that a line's straight parts leave the true middle, mm; with rounding to 1 µm the distances differ by < 0.01. */
const CHORD = 0.004;
/** Junctions nearer together than this are one, mm: four pieces that meet, or three that the samples cannot tell apart. */
const ONE_NODE = 0.008;
/** What the samples' own diagram may be off by, mm: enough to have its junctions right. */
const SAMPLED = 0.004;

/**
 * The network of `sites`. Their outlines are sampled; the samples' Delaunay triangles give the topology (a triangle on
 * three sites is a junction, one on two sites a step along a line); each point is then moved to where the exact
 * distances are equal. `gap` is the least distance between sites, mm.
 */
export function networkOf(sites: readonly Site[], gap: number): Network {
  const coordinates: number[] = [];
  const owner: number[] = [];
  const spacing = spacingFor(sites, gap);
  const inset = insetFor(gap, spacing);
  sites.forEach((site, index) => {
    sampleSite(site, spacing, inset, coordinates);
    while (2 * owner.length < coordinates.length) owner.push(index);
  });
  const mesh = meshOf(coordinates, owner);
  return merged(linesOf(mesh, sites, spacing));
}

/** Finest sampling, as a part of the smallest piece: pieces that all but touch would else need samples without end. */
const FINEST = 1 / 400;

// A diagram of samples h apart is off the middle by h² / (8 · gap).
function spacingFor(sites: readonly Site[], gap: number): number {
  const smallest = Math.min(...sites.flatMap(({ shapes }) => shapes.map(extentOf)));
  return Math.max(Math.sqrt(8 * SAMPLED * gap), smallest * FINEST);
}

/**
 * How far samples h apart are drawn into their sites, mm. Two neighbours belong together if a circle through both,
 * through the hollow of their own piece, holds no other's sample; at a sharp corner it bulges out by up to h / 4.
 */
function insetFor(gap: number, spacing: number): number {
  return Math.max(1e-3, spacing / 4 - gap / 2);
}

function extentOf(shape: Shape): number {
  if (shape.form !== "outline") return 2 * shape.radius;
  return farthest(shape.outline.map(([x, y]): Point => [x - shape.outline[0]![0], y - shape.outline[0]![1]]));
}

function linesOf(mesh: Mesh, sites: readonly Site[], spacing: number): Network {
  const count = mesh.triangles.length / 3;
  const nodeOf = new Int32Array(count).fill(-1);
  const nodes: Point[] = [];
  for (let t = 0; t < count; t++) {
    if (!(crosses(mesh, 3 * t) && crosses(mesh, 3 * t + 1) && crosses(mesh, 3 * t + 2))) continue;
    const [a, b, c] = [mesh.sites[3 * t]!, mesh.sites[3 * t + 1]!, mesh.sites[3 * t + 2]!];
    nodeOf[t] = nodes.length;
    const start = circumcentre(mesh, t);
    // Where two sites close in on each other like a wedge, a little in distance is much in place.
    const reach = Math.max(spacing, Math.abs(distanceTo(sites[a]!, start)));
    nodes.push(ontoJunction(start, sites[a]!, sites[b]!, sites[c]!, reach));
  }
  const lines: MiddleLine[] = [];
  const walked = new Uint8Array(mesh.triangles.length);
  const walk = (start: number): void => {
    const left = mesh.sites[start]!;
    const right = mesh.sites[next(start)]!;
    const way: Point[] = [];
    let half = start;
    for (;;) {
      walked[half] = 1;
      const across = mesh.halfedges[half]!;
      walked[across] = 1;
      const triangle = Math.floor(across / 3);
      const node = nodeOf[triangle]!;
      if (node >= 0) {
        const from = nodeOf[Math.floor(start / 3)]!;
        const ends = [Math.floor(start / 3), triangle].map((end) => sites[third(mesh, end, left, right)]!);
        const points = drawn([nodes[from]!, ...way, nodes[node]!], sites[left]!, sites[right]!, ends);
        lines.push({ a: from, b: node, points, left, right });
        return;
      }
      way.push(circumcentre(mesh, triangle));
      half = next(across);
      if (!crosses(mesh, half)) half = next(half);
      if (half !== start) continue;
      const first = ontoBisector(way[0]!, sites[left]!, sites[right]!);
      nodes.push(first);
      const points = drawn([first, ...way.slice(1), first], sites[left]!, sites[right]!);
      lines.push({ a: nodes.length - 1, b: nodes.length - 1, points, left, right });
      return;
    }
  };
  // Lines between junctions first; what is left then closes on itself round a single site.
  for (let half = 0; half < mesh.triangles.length; half++) {
    if (nodeOf[Math.floor(half / 3)]! >= 0 && walked[half] === 0) walk(half);
  }
  for (let half = 0; half < mesh.triangles.length; half++) {
    if (walked[half] === 0 && crosses(mesh, half) && mesh.halfedges[half]! >= 0) walk(half);
  }
  return { nodes, lines };
}

/**
 * The way through the samples' circumcentres as a line on the true middle, with no more points than its shape needs.
 * `ends` are the third sites at its junctions: what lies nearer to them is past the junction.
 */
function drawn(way: Point[], left: Site, right: Site, ends: readonly Site[] = []): Point[] {
  const last = way.length - 1;
  const exact: Point[] = [way[0]!];
  for (let i = 1; i < last; i++) {
    // Every fourth point shows the shape; `bend` adds what it needs beyond.
    if (i % 4 !== 0) continue;
    const point = ontoBisector(way[i]!, left, right);
    const own = distanceTo(left, point);
    if (ends.every((site) => distanceTo(site, point) >= own)) exact.push(point);
  }
  exact.push(way[last]!);
  const points = simplified(exact, CHORD);
  const whole: Point[] = [points[0]!];
  for (let i = 1; i < points.length; i++) bend(points[i - 1]!, points[i]!, left, right, whole);
  return whole;
}

/** Appends the line from `from` to `to`, bent to the true middle where its straight part leaves it. */
function bend(from: Point, to: Point, left: Site, right: Site, out: Point[], depth = 0): void {
  for (const share of [0.5, 0.25, 0.75]) {
    const straight = along(from, to, share);
    const exact = ontoBisector(straight, left, right);
    if (depth > 12 || between(straight, exact) <= CHORD) continue;
    bend(from, exact, left, right, out, depth + 1);
    bend(exact, to, left, right, out, depth + 1);
    return;
  }
  out.push(to);
}

/** `network` on whole micrometres, with junctions that fall together made one and lines without length left out. */
function merged({ nodes, lines }: Network): Network {
  const group = nodes.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (group[at] !== at) at = group[at]!;
    return at;
  };
  for (const { a, b, points } of lines) {
    if (a !== b && between(nodes[a]!, nodes[b]!) < ONE_NODE && lengthOf(points) < 4 * ONE_NODE)
      group[root(a)] = root(b);
  }
  const sums = new Map<number, { x: number; y: number; count: number }>();
  nodes.forEach(([x, y], i) => {
    const sum = sums.get(root(i)) ?? { x: 0, y: 0, count: 0 };
    sums.set(root(i), { x: sum.x + x, y: sum.y + y, count: sum.count + 1 });
  });
  const index = new Map<number, number>();
  const kept: Point[] = [];
  for (const [at, { x, y, count }] of sums) {
    index.set(at, kept.length);
    kept.push(rounded([x / count, y / count]));
  }
  const result: MiddleLine[] = [];
  for (const line of lines) {
    const a = index.get(root(line.a))!;
    const b = index.get(root(line.b))!;
    const inner = line.points.slice(1, -1).map(rounded);
    const points = [kept[a]!, ...inner, kept[b]!].filter(
      (point, i, all) => i === 0 || i === all.length - 1 || between(point, all[i - 1]!) > 0,
    );
    if (a === b && lengthOf(points) < 8 * ONE_NODE) continue;
    result.push({ ...line, a, b, points });
  }
  return { nodes: kept, lines: result };
}

/** Whether `point` lies on the tool's edge, to the micrometre it is rounded to. */
export function onEdge([x, y]: Point, toolDiameter: number): boolean {
  return Math.abs(hypot(x, y) - toolDiameter / 2) < 2e-3;
}
