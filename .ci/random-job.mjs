// Random jobs over the whole job space, for the fuzz and the reading back.
import { CATALOGUE, GRAINS, PLASTERS } from "../packages/casting-core/dist/index.js";

/** A small seeded source: this script shares nothing with the code under test. */
function source(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x45d9f3b);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 4294967296;
  };
}

/** Sizes of the catalogue's pieces by name: plain data for who measures again. */
export const ITEMS = new Map(CATALOGUE.map(({ item, piece }) => [item, piece]));

/** The text of a random job; a `small` one has few pieces, so that a great many can be made. */
export function randomJob(seed, small = false) {
  const next = source(seed * 7919 + 13);
  for (let n = 0; n < 5; n++) next();
  const between = (least, most) => Number((least + (most - least) * next()).toFixed(3));
  const pick = (list) => list[Math.floor(next() * list.length)];
  const maybe = (share) => next() < share;
  const diameter = between(60, 500);
  const curve = pick(["concave", "concave", "concave", "convex", "flat"]);
  const radius = diameter * between(0.8, 16);
  const tool = diameter * (maybe(0.1) ? 1 : between(0.35, 0.95));
  const size = Math.max(4, tool / (small ? between(2, 4.5) : between(5, 16)));
  const items = CATALOGUE.filter(({ piece: own }) => {
    const across = own.across ?? own.diameter ?? own.length ?? 99;
    return across < tool / 4 && (!small || across > tool / 9);
  }).map(({ item }) => item);
  const piece = () => {
    if (maybe(0.3)) return { item: pick(items) ?? "iso-4032-m5" };
    const own = { thickness: between(2, 9), density: between(2.2, 7.8) };
    const bore = maybe(0.2) ? { bore: Number((size * 0.3).toFixed(3)) } : {};
    const across = Number((size * between(0.7, 1.3)).toFixed(3));
    switch (pick(["hexagon", "square", "triangle", "rectangle", "round", "polygon"])) {
      case "hexagon":
        return { shape: "hexagon", across, ...own, ...bore };
      case "square":
        return { shape: "square", across, ...own, ...bore };
      case "triangle":
        return { shape: "triangle", across, ...own };
      case "rectangle":
        return { shape: "rectangle", length: Number((across * between(1.1, 2.5)).toFixed(3)), width: across, ...own };
      case "round":
        return { shape: "round", diameter: across, ...own, ...bore };
      default: {
        const corners = 3 + Math.floor(next() * 6);
        const points = Array.from({ length: corners }, (_, n) => {
          const angle = (2 * Math.PI * (n + 0.6 * next())) / corners;
          return [
            Number((across * 0.6 * Math.cos(angle)).toFixed(3)),
            Number((across * 0.6 * Math.sin(angle)).toFixed(3)),
          ];
        });
        return { shape: "polygon", points, ...own };
      }
    }
  };
  const kinds = maybe(0.25) ? 2 + Math.floor(next() * 2) : 1;
  const pieces = Array.from({ length: kinds }, piece);
  if (kinds > 1 && maybe(0.5)) pieces[0].share = pick(["30%", "0.5", "62.5%"]);
  if (kinds > 1 && maybe(0.3)) pieces[1].stock = 1 + Math.floor(next() * 12);
  const job = {
    title: pick(["A tool", 'Tool "<b>" & co', "=1+1", "工具", "x".repeat(300)]),
    blank: {
      diameter,
      curve,
      ...(curve === "flat" ? {} : maybe(0.3) ? { "focal-ratio": between(0.6, 12) } : { radius }),
      ...(curve !== "flat" && maybe(0.3) ? { target: { radius: radius * between(0.8, 1.3) } } : {}),
      ...(maybe(0.4) ? { thickness: diameter * between(0.06, 0.25) } : {}),
      ...(maybe(0.3) ? { bevel: between(0.5, 6) } : {}),
      ...(maybe(0.3) ? { material: pick(["borosilicate", "soda-lime", "fused-silica"]) } : {}),
    },
    tool: { diameter: tool, rim: between(0, 6) },
    pieces,
    layout: {
      seed: Math.floor(next() * 1e6),
      ...(maybe(0.5) ? { gap: maybe(0.1) ? 0 : between(1, 6) } : {}),
      ...(maybe(0.25) ? { count: 1 + Math.floor(next() * (small ? 5 : 40)) } : {}),
      ...(maybe(0.3) ? { hand: between(0.1, 1) } : {}),
      ...(maybe(0.2) ? { "keep-clear": [{ x: between(-30, 30), y: between(-30, 30), diameter: between(5, 60) }] } : {}),
    },
    grooves: maybe(0.6)
      ? {
          cutter: between(1, 5),
          depth: between(0.5, 5),
          clearance: between(0, 1.2),
          pattern: pick(["all", "mains"]),
          order: pick(["fewest", "one"]),
          "rim-loop": maybe(0.3),
        }
      : {},
    plaster: {
      ...(maybe(0.15)
        ? { kind: "custom", water: between(0.2, 0.9), density: between(2.2, 2.9) }
        : { kind: pick(PLASTERS).kind }),
      ...(maybe(0.5) ? { fill: between(12, 60) } : {}),
      cover: between(3, 25),
      spare: pick(["0%", "10%", "0.25"]),
    },
    ...(maybe(0.3)
      ? {
          socket: {
            diameter: between(10, 40),
            length: between(20, 80),
            foot: pick(["pieces", "glass"]),
            plugged: maybe(0.7),
          },
        }
      : {}),
    ...(maybe(0.75)
      ? {
          container: pick([
            () => ({ shape: "round", diameter: between(80, 300) }),
            () => ({ shape: "tapered", bottom: between(80, 200), top: between(90, 260) }),
            () => ({ shape: "box", length: between(100, 300), width: between(80, 200) }),
            () => ({
              shape: "marks",
              marks: [
                { height: 30, volume: between(0.3, 1) },
                { height: 80, volume: between(1.1, 3) },
                { height: 140, volume: between(3.1, 6) },
              ],
            }),
          ])(),
        }
      : {}),
    ...(maybe(0.4)
      ? {
          setup: {
            ...(maybe(0.5) ? { offset: between(0, diameter / 3) } : {}),
            stroke: maybe(0.5) ? between(0, diameter / 4) : 0,
            grain: pick(GRAINS).name,
            "tool-turns": between(-1.2, 1.2),
          },
        }
      : {}),
    print: { paper: pick(["A4", "Letter", "full", "500x700"]) },
  };
  if (job.container) Object.assign(job.container, { height: between(150, 260), headroom: between(0, 40) });
  // Drawn last, so that what was drawn before stays as it was.
  if (maybe(0.3)) job.plaster.film = between(0.05, 2);
  return JSON.stringify(job);
}
