import { distance, farthest } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import { hypot } from "../../trig.js";
import { lengthOf, rounded } from "../polyline.js";
import { putRight } from "./junctions.js";
import { meshOf } from "./mesh.js";
import { middleLine } from "./middle.js";
import { type Shape, type Site, sampleSite } from "./sites.js";
import { waysOf } from "./ways.js";

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

/** Junctions nearer together than this are one, mm: four pieces that meet, or three that the samples cannot tell apart. */
const ONE_NODE = 0.008;
/**
 * What the samples' own diagram may be off by, mm: near enough for what is then put right by exact distances, and a third
 * of the samples, and so of the time, that would have nearly every junction right at once.
 */
const SAMPLED = 0.04;
/** The same where that does not come out right. */
const FINELY = 0.004;

/**
 * The network of `sites`. Their outlines are sampled; the samples' Delaunay triangles give the topology (a triangle on
 * three sites is a junction, one on two sites a step along a line); each point is then moved to where the exact
 * distances are equal. `gap` is the least distance between sites, mm.
 */
export function networkOf(sites: readonly Site[], gap: number): Network {
  return merged(sampled(sites, gap, SAMPLED) ?? sampled(sites, gap, FINELY, true)!);
}

/** The network by samples that are off by `error`; nothing where its junctions are not right, unless `anyhow`. */
function sampled(sites: readonly Site[], gap: number, error: number, anyhow = false): Network | undefined {
  const coordinates: number[] = [];
  const owner: number[] = [];
  const spacing = spacingFor(sites, gap, error);
  const inset = insetFor(gap, spacing);
  const bow = bowFor(sites, spacing);
  sites.forEach((site, index) => {
    sampleSite(site, spacing, inset + (site.kind === "rim" ? bow : 0), coordinates);
    while (2 * owner.length < coordinates.length) owner.push(index);
  });
  const { nodes, ways } = waysOf(meshOf(coordinates, owner), sites, spacing);
  if (!putRight(nodes, ways, sites, spacing) && !anyhow) return undefined;
  const lines = ways.map(({ a, b, left, right, ends, through }): MiddleLine => {
    const way = [nodes[a]!, ...through, nodes[b]!];
    const beyond = ends.map((end) => sites[end]!);
    const points = middleLine(way, sites[left]!, sites[right]!, beyond, spacing);
    return { a, b, points, left, right };
  });
  return { nodes, lines };
}

/** Finest sampling, as a part of the smallest piece: pieces that all but touch would else need samples without end. */
const FINEST = 1 / 400;

// A diagram of samples h apart is off the middle by h² / (8 · gap).
function spacingFor(sites: readonly Site[], gap: number, error: number): number {
  const smallest = Math.min(...sites.flatMap(({ shapes }) => shapes.map(extentOf)));
  return Math.max(Math.sqrt(8 * error * gap), smallest * FINEST);
}

/**
 * How far samples h apart are drawn into their sites, mm. Two neighbours belong together if a circle through both,
 * through the hollow of their own piece, holds no other's sample; at a sharp corner it bulges out by up to h / 4.
 */
function insetFor(gap: number, spacing: number): number {
  return Math.max(1e-3, spacing / 4 - gap / 2);
}

/**
 * How far the samples of the tool's edge are moved out for what stands on it, mm: its circle bows out between two of
 * them, and a corner there would lie outside them all.
 */
function bowFor(sites: readonly Site[], spacing: number): number {
  const [radius] = sites.flatMap(({ shapes }) =>
    shapes.flatMap((shape) => (shape.form === "hollow" ? shape.radius : [])),
  );
  const reach = Math.max(...sites.flatMap(({ kind, shapes }) => (kind === "rim" ? [] : shapes.map(reachOf))));
  return Math.max(0, (spacing * spacing) / (8 * radius!) + reach - radius!);
}

/** Distance from the tool's middle to the farthest point of a shape, mm. */
function reachOf(shape: Shape): number {
  if (shape.form === "outline") return farthest(shape.outline);
  return shape.form === "disc" ? hypot(shape.x, shape.y) + shape.radius : shape.radius;
}

function extentOf(shape: Shape): number {
  if (shape.form !== "outline") return 2 * shape.radius;
  return farthest(shape.outline.map(([x, y]): Point => [x - shape.outline[0]![0], y - shape.outline[0]![1]]));
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
    if (lengthOf(points) < ONE_NODE) group[root(a)] = root(b);
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
      (point, i, all) => i === 0 || distance(point, all[i - 1]!) > 0,
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
