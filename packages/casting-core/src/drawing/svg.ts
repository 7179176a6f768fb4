import type { Point } from "../geometry/types.js";
import type { Ink, Shape, Sheet, Step, Style } from "./sheet.js";

const INKS: Record<Ink, string> = { black: "#000000", grey: "#777777", pale: "#cccccc", white: "#ffffff" };

/** What every sheet's root says besides its size. */
const ROOT = { xmlns: "http://www.w3.org/2000/svg", version: "1.1", "xmlns:xlink": "http://www.w3.org/1999/xlink" };

/**
 * The text of a sheet as SVG: root sized in mm with a viewBox in the same numbers, so that one unit is one millimetre.
 */
export function sheetSvg({ width, height, caption, groups }: Sheet): string {
  const root = {
    ...ROOT,
    width: `${number(width)}mm`,
    height: `${number(height)}mm`,
    viewBox: `0 0 ${number(width)} ${number(height)}`,
    role: "img",
    "font-family": "Helvetica, Arial, sans-serif",
  };
  const paper = element("rect", { width: number(width), height: number(height), fill: INKS.white });
  const drawn = groups.map(({ id, shapes }) => element("g", { id }, shapes.map(shapeSvg).join("")));
  const inner = element("title", {}, escaped(caption)) + paper + drawn.join("");
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element("svg", root, inner)}\n`;
}

function element(name: string, attributes: Record<string, string>, inner = ""): string {
  let text = `<${name}`;
  for (const key in attributes) text += ` ${key}="${escaped(attributes[key]!)}"`;
  return `${text}>${inner}</${name}>`;
}

/** What stands for a character that would be read as part of a tag. */
const ENTITIES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (character) => ENTITIES[character]!);
}

function shapeSvg(shape: Shape): string {
  switch (shape.kind) {
    case "polyline":
    case "polygon":
      return element(shape.kind, {
        ...numbered(shape.piece),
        points: points(shape.points),
        ...styled(shape.style),
      });
    case "circle": {
      const [x, y] = shape.centre;
      // A round piece is proved on its radius, which a rounding to micrometres could enlarge.
      const round = { cx: number(x), cy: number(y), r: decimal(shape.radius, 6) };
      return element("circle", { ...numbered(shape.piece), ...round, ...styled(shape.style) });
    }
    case "path":
      return element("path", { d: steps(shape.steps), ...styled(shape.style) });
    case "text": {
      const [x, y] = [number(shape.at[0]), number(shape.at[1])];
      const turn = shape.turn ? { transform: `rotate(${number(-shape.turn)} ${x} ${y})` } : {};
      const place = { x, y, "font-size": number(shape.size), "text-anchor": shape.align, ...turn };
      return element("text", place, escaped(shape.text));
    }
  }
}

function numbered(piece: number | undefined): Record<string, string> {
  return piece === undefined ? {} : { "data-piece": String(piece) };
}

function styled({ line, dash, ink = "black", fill }: Style): Record<string, string> {
  return {
    fill: fill ? INKS[fill] : "none",
    ...(line > 0 ? { stroke: INKS[ink], "stroke-width": number(line) } : {}),
    ...(line > 0 && dash ? { "stroke-dasharray": dash.map(number).join(" ") } : {}),
    ...(line > 0 ? { "stroke-linejoin": "round" } : {}),
  };
}

function points(list: readonly Point[]): string {
  return list.map(([x, y]) => `${number(x)},${number(y)}`).join(" ");
}

/** SVG turns clockwise with y down where its sweep flag is 1. */
function steps(list: readonly Step[]): string {
  const parts = list.map(({ to: [x, y], arc }, index) => {
    const end = `${number(x)} ${number(y)}`;
    if (!arc) return `${index === 0 ? "M" : "L"}${end}`;
    return `A${number(arc.radius)} ${number(arc.radius)} 0 ${arc.large ? 1 : 0} ${arc.left ? 0 : 1} ${end}`;
  });
  return `${parts.join("")}Z`;
}

/** Three decimals, none of them a trailing zero, no exponent, no minus zero. */
function number(value: number): string {
  return decimal(value, 3);
}

function decimal(value: number, places: 3 | 6): string {
  const scale = places === 3 ? 1e3 : 1e6;
  const text = (Math.round(value * scale) / scale).toFixed(places).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
