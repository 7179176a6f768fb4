import type { Plan } from "../plan/types.js";

/** The pieces as CSV (RFC 4180): id, kind counted from 0, catalogue name, place in mm and turn in degrees, seen from the back. */
export function piecesCsv({ layout }: Pick<Plan, "layout">): string {
  const rows = layout.pieces.map(({ id, kind, item, x, y, angle }) =>
    [id, kind, cell(item ?? ""), decimals(x), decimals(y), decimals(angle)].join(","),
  );
  return ["id,kind,item,x,y,angle", ...rows, ""].join("\r\n");
}

/** A cell that a spreadsheet takes as text: quoted where it must be, never the beginning of a formula. */
function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function decimals(value: number): string {
  const text = value.toFixed(3);
  return text === "-0.000" ? "0.000" : text;
}
