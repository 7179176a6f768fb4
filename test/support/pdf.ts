// Reads a PDF page by page as it is drawn: what stands where, in millimetres from the upper left corner, y down.
import type { Point } from "../../packages/casting-core/src/geometry/types.js";

export interface Drawn {
  kind: "path" | "text";
  /** Ends of the parts of a path; where a text begins. */
  points: Point[];
  /** The two points that pull each curve; nothing for a straight part. */
  pulls: (readonly [Point, Point] | undefined)[];
  closed: boolean;
  /** Width of the line, mm, with its dashes and colour; absent where none is drawn. */
  line?: { width: number; dash: number[]; colour: string };
  fill?: string;
  clips: boolean;
  /** The words, their size in mm and the direction they run in, degrees counter-clockwise. */
  text?: string;
  size?: number;
  turn?: number;
}

export interface DrawnPage {
  width: number;
  height: number;
  items: Drawn[];
}

type Matrix = [number, number, number, number, number, number];
const MM = 25.4 / 72;

/** Every page of a PDF whose streams are not compressed. */
export function pagesOf(pdf: Uint8Array): DrawnPage[] {
  const text = Buffer.from(pdf).toString("latin1");
  return [...text.matchAll(/\/Type \/Page\n.*?\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]\n\/Contents (\d+) 0 R/gs)].map(
    ([, width, height, contents]) => {
      const stream = new RegExp(`\n${contents} 0 obj\n.*?stream\n(.*?)\nendstream`, "s").exec(text)![1]!;
      return { width: Number(width) * MM, height: Number(height) * MM, items: itemsOf(stream, Number(height)) };
    },
  );
}

function times([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix {
  return [a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F];
}

function itemsOf(stream: string, height: number): Drawn[] {
  interface State {
    at: Matrix;
    width: number;
    dash: number[];
    line: string;
    fill: string;
  }
  // Millimetres from the upper left corner, of points from the lower left one.
  let state: State = { at: [MM, 0, 0, -MM, 0, height * MM], width: 1, dash: [], line: "0 0 0", fill: "0 0 0" };
  const saved: State[] = [];
  const items: Drawn[] = [];
  let path: Drawn | undefined;
  let font = 0;
  let textAt: Matrix = [1, 0, 0, 1, 0, 0];
  const on = (x: number, y: number, at = state.at): Point => [
    at[0] * x + at[2] * y + at[4],
    at[1] * x + at[3] * y + at[5],
  ];
  const scale = (at: Matrix): number => Math.sqrt(Math.abs(at[0] * at[3] - at[1] * at[2]));
  const begun = (): Drawn => {
    path ??= { kind: "path", points: [], pulls: [], closed: false, clips: false };
    return path;
  };
  const colour = (parts: number[]): string => parts.map((part) => Math.round(part * 255)).join(" ");
  const painted = (stroked: boolean, filled: boolean): void => {
    const item = begun();
    const by = scale(state.at);
    if (stroked) {
      item.line = { width: state.width * by, dash: state.dash.map((length) => length * by), colour: state.line };
    }
    if (filled) item.fill = state.fill;
    items.push(item);
    path = undefined;
  };
  for (const row of stream.split("\n")) {
    const words = row.trim().split(/\s+/);
    const operator = words.pop()!;
    const n = words.map(Number);
    if (operator === "q") saved.push({ ...state });
    else if (operator === "Q") state = saved.pop()!;
    else if (operator === "cm") state.at = times(n as Matrix, state.at);
    else if (operator === "m" || operator === "l") {
      begun().points.push(on(n[0]!, n[1]!));
      if (operator === "l") begun().pulls.push(undefined);
    } else if (operator === "c") {
      begun().pulls.push([on(n[0]!, n[1]!), on(n[2]!, n[3]!)]);
      begun().points.push(on(n[4]!, n[5]!));
    } else if (operator === "re") {
      const [x, y, w, h] = n as [number, number, number, number];
      begun().points.push(on(x, y), on(x + w, y), on(x + w, y + h), on(x, y + h));
      begun().closed = true;
    } else if (operator === "h") begun().closed = true;
    else if (operator === "n") {
      begun().clips = words.includes("W");
      painted(false, false);
    } else if (operator === "S") painted(true, false);
    else if (operator === "f") painted(false, true);
    else if (operator === "B") painted(true, true);
    else if (operator === "w") state.width = n[0]!;
    else if (operator === "d") state.dash = /\[(.*)\]/.exec(row)![1]!.split(/\s+/).filter(Boolean).map(Number);
    else if (operator === "SCN") state.line = colour(n);
    else if (operator === "scn") state.fill = colour(n);
    else if (operator === "Tf") font = n[1]!;
    else if (operator === "Tm") textAt = n as Matrix;
    else if (operator === "TJ") {
      const words = [...row.matchAll(/<([0-9a-f]*)>/g)].map(([, hex]) => Buffer.from(hex!, "hex").toString("latin1"));
      const whole = times(textAt, state.at);
      items.push({
        kind: "text",
        points: [on(0, 0, whole)],
        pulls: [],
        closed: false,
        clips: false,
        fill: state.fill,
        text: words.join("").replaceAll("\x85", "…"),
        size: font * scale(whole),
        turn: (Math.atan2(-whole[1], whole[0]) * 180) / Math.PI || 0,
      });
    } else if (!["", "cs", "CS", "j", "BT", "ET"].includes(operator)) throw new Error(`unknown operator ${row}`);
  }
  return items;
}
