import { type Container, type Dom, registerWindow, SVG, type Svg } from "@svgdotjs/svg.js";
import type { Point } from "../geometry/types.js";
import { thousandths } from "../units/digits.js";
import type { Ink, Shape, Sheet, Step, Style } from "./sheet.js";

const INKS: Record<Ink, string> = { black: "#000000", grey: "#777777", pale: "#cccccc", white: "#ffffff" };

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
  put(root, "rect", { width: number(sheet.width), height: number(sheet.height) }, { line: 0, fill: "white" });
  for (const { id, shapes } of sheet.groups) {
    const group = root.group().attr({ id });
    for (const shape of shapes) draw(group, shape);
  }
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root.node.outerHTML}\n`;
}

function draw(group: Container, shape: Shape): void {
  switch (shape.kind) {
    case "polyline":
    case "polygon":
      put(group, shape.kind, { ...numbered(shape.piece), points: points(shape.points) }, shape.style);
      break;
    case "circle": {
      const [x, y] = shape.centre;
      // A round piece is proved on its radius, which a rounding to micrometres could enlarge.
      const circle = {
        ...numbered(shape.piece),
        cx: number(x),
        cy: number(y),
        r: String(Math.round(shape.radius * 1e6) / 1e6),
      };
      put(group, "circle", circle, shape.style);
      break;
    }
    case "path":
      put(group, "path", { d: steps(shape.steps) }, shape.style);
      break;
    case "text": {
      const [x, y] = shape.at;
      const label = { x: number(x), y: number(y), "font-size": number(shape.size), "text-anchor": shape.align };
      put(group, "text", label).words(shape.text);
    }
  }
}

/**
 * A new element at the end of `parent`. Its attributes are given to the node itself: svg.js would look through each for
 * colours, pictures and lists, which takes longer than all the rest.
 */
function put(parent: Container, name: string, attributes: Record<string, string>, style?: Style): Dom {
  const element = parent.element(name);
  const { node } = element;
  for (const key in attributes) node.setAttribute(key, attributes[key]!);
  if (!style) return element;
  const { line, dash, ink = "black", fill } = style;
  node.setAttribute("fill", fill ? INKS[fill] : "none");
  if (line > 0) {
    node.setAttribute("stroke", INKS[ink]);
    node.setAttribute("stroke-width", number(line));
    if (dash) node.setAttribute("stroke-dasharray", dash.map(number).join(" "));
    node.setAttribute("stroke-linejoin", "round");
  }
  return element;
}

function numbered(piece: number | undefined): Record<string, string> {
  return piece === undefined ? {} : { "data-piece": String(piece) };
}

function points(list: readonly Point[]): string {
  let written = "";
  for (let i = 0; i < list.length; i++) {
    const point = list[i]!;
    written += `${i === 0 ? "" : " "}${number(point[0])},${number(point[1])}`;
  }
  return written;
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
  return thousandths(Math.round(value * 1e3));
}
