import { type Container, registerWindow, SVG, type Svg } from "@svgdotjs/svg.js";
import type { Point } from "../geometry/types.js";
import type { Ink, Shape, Sheet, Step, Style } from "./sheet.js";

const INKS: Record<Ink, string> = { black: "#000", grey: "#777", pale: "#ccc", white: "#fff" };

/** What svg.js draws into: a window with an empty SVG document, such as svgdom's. */
export interface SvgWindow {
  document: { documentElement: unknown };
}

/**
 * The text of a sheet as SVG: root sized in mm with a viewBox in the same numbers, so that one unit is one millimetre.
 * `window` is emptied and drawn into.
 */
export function sheetSvg(sheet: Sheet, window: SvgWindow): string {
  registerWindow(window as never, window.document as never);
  const root = SVG(window.document.documentElement as never) as unknown as Svg;
  root.clear();
  root.attr({
    width: `${number(sheet.width)}mm`,
    height: `${number(sheet.height)}mm`,
    viewBox: `0 0 ${number(sheet.width)} ${number(sheet.height)}`,
    role: "img",
    "font-family": "Helvetica, Arial, sans-serif",
  });
  root.element("title").words(sheet.caption);
  root.element("rect").attr({ width: number(sheet.width), height: number(sheet.height), fill: INKS.white });
  for (const { id, shapes } of sheet.groups) {
    const group = root.group().attr({ id });
    for (const shape of shapes) draw(group, shape);
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root.svg()}\n`;
}

function draw(group: Container, shape: Shape): void {
  switch (shape.kind) {
    case "polyline":
    case "polygon":
      group
        .element(shape.kind)
        .attr({ ...numbered(shape.piece), points: points(shape.points), ...styled(shape.style) });
      break;
    case "circle": {
      const [cx, cy] = shape.centre.map(number);
      // A round piece is proved on its radius, which a rounding to micrometres could enlarge.
      group
        .element("circle")
        .attr({ ...numbered(shape.piece), cx, cy, r: decimal(shape.radius, 6), ...styled(shape.style) });
      break;
    }
    case "path":
      group.element("path").attr({ d: steps(shape.steps), ...styled(shape.style) });
      break;
    case "text": {
      const [x, y] = shape.at.map(number);
      const label = group.element("text").attr({ x, y, "font-size": number(shape.size), "text-anchor": shape.align });
      label.words(shape.text);
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
  // A number so rounded is written with no more decimals than it was rounded to, and −0 as 0.
  return String(Math.round(value * scale) / scale);
}
