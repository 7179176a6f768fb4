import { CATALOGUE, GRAINS, nearest, PAPERS, PLASTERS, planJson } from "casting-core";
import type { Terminal } from "../terminal.js";
import { usage } from "../usage.js";

type Cell = string | number;

interface Listing {
  title: string;
  head: string[];
  rows: () => { cells: Cell[]; source: string; data: object }[];
}

const LISTINGS: Record<string, Listing> = {
  pieces: {
    title: "Pieces that can be bought; lengths in mm, density in kg/L. Measured sizes of your own come first.",
    head: ["item", "what it is", "shape", "size", "thick", "bore", "density"],
    rows: () =>
      CATALOGUE.map((row) => {
        const { piece } = row;
        const cells = [
          row.item,
          row.name,
          piece.shape,
          sizeOf(piece),
          piece.thickness,
          piece.bore ?? "",
          piece.density,
        ];
        return { cells, source: row.source, data: row };
      }),
  },
  plasters: {
    title: "Plasters; water in g per g of powder, expansion in %, strength in MPa. The bag's own figures come first.",
    head: ["kind", "name", "water", "expansion", "strength"],
    rows: () =>
      PLASTERS.map((row) => {
        const { least, most } = row.expansion;
        const cells = [row.kind, row.name, row.water, `${least} to ${most}`, row.strength];
        return { cells, source: row.source, data: row };
      }),
  },
  papers: {
    title: "Papers, in mm; or a size of your own as WIDTHxHEIGHT, or full for one true-size sheet.",
    head: ["paper", "width", "height"],
    rows: () => PAPERS.map((row) => ({ cells: [row.name, row.width, row.height], source: row.source, data: row })),
  },
  grains: {
    title: "Grains, in µm.",
    head: ["grain", "size"],
    rows: () => GRAINS.map((row) => ({ cells: [row.name, row.size], source: row.source, data: row })),
  },
};

/** Figures of the tables to three decimals, as a person reads them; `--json` has them in full. */
function shown(cell: Cell, decimals = 3): string {
  return typeof cell === "number" ? String(Number(cell.toFixed(decimals))) : cell;
}

/** `casting list`: a built-in table with its sources. */
export function list(table: string, options: { json?: boolean }, terminal: Terminal): number {
  const listing = Object.hasOwn(LISTINGS, table) ? LISTINGS[table] : undefined;
  if (!listing) {
    const near = nearest(table, Object.keys(LISTINGS));
    const hint = near ? `did you mean ${near}?` : `choose from ${Object.keys(LISTINGS).join(", ")}`;
    throw usage(`there is no table ${table.slice(0, 40)}; ${hint}`);
  }
  const rows = listing.rows();
  if (options.json) {
    terminal.out(planJson({ table, rows: rows.map(({ data }) => data) }));
    return 0;
  }
  const lines = [listing.head, ...rows.map(({ cells }) => cells.map((cell) => shown(cell)))];
  const widths = listing.head.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  const [head, ...body] = lines.map((line) => line.map((cell, column) => cell.padEnd(widths[column]!)).join("  "));
  const sources = [...new Set(rows.map(({ source }) => source))];
  const marks = (source: string) => `[${sources.indexOf(source) + 1}]`;
  terminal.out(`${listing.title}\n\n${head!.trimEnd()}\n`);
  for (const [n, line] of body.entries()) terminal.out(`${line}  ${marks(rows[n]!.source)}\n`);
  terminal.out(`\nSources\n${sources.map((source) => `${marks(source)} ${source}\n`).join("")}`);
  return 0;
}

/** Sizes to four decimals: sixteenths of an inch in mm take as many. */
function sizeOf(piece: (typeof CATALOGUE)[number]["piece"]): string {
  const mm = (value: number) => shown(value, 4);
  if (piece.shape === "rectangle") return `${mm(piece.length)} x ${mm(piece.width)}`;
  if (piece.shape === "round") return mm(piece.diameter);
  return piece.shape === "polygon" ? "" : mm(piece.across);
}
