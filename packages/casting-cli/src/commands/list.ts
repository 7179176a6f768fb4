import { CATALOGUE, GRAINS, lengthText, nearest, PAPERS, PLASTERS, planJson, type Units } from "casting-core";
import type { Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { unitsOf } from "./options.js";

type Cell = string | number;

interface Listing {
  title: (units: Units) => string;
  head: string[];
  rows: (units: Units) => { cells: Cell[]; source: string; data: object }[];
}

const UNITS: Record<Units, string> = { mm: "mm", in: "inches" };
/** MPa in a pound per square inch (NIST SP 811, appendix B). */
const MPA_PER_PSI = 0.006894757;

/** A length as a cell: a number of mm, or inches as a maker writes them. */
function length(mm: number, units: Units): string {
  return units === "in" ? lengthText(mm, units).replace(/ in$/, "") : shown(mm);
}

const LISTINGS: Record<string, Listing> = {
  pieces: {
    title: (units) =>
      `Pieces that can be bought; lengths in ${UNITS[units]}, density in kg/L. Measured sizes of your own come first.`,
    head: ["item", "what it is", "shape", "size", "thick", "bore", "density"],
    rows: (units) =>
      CATALOGUE.map((row) => {
        const { piece } = row;
        const thick = length(piece.thickness, units);
        const bore = piece.bore === undefined ? "" : length(piece.bore, units);
        const cells = [row.item, row.name, piece.shape, sizeOf(piece, units), thick, bore, piece.density];
        return { cells, source: row.source, data: row };
      }),
  },
  plasters: {
    title: (units) =>
      `Plasters; water in g per g of powder, expansion in %, strength in ${units === "in" ? "psi" : "MPa"}. The bag's own figures come first.`,
    head: ["kind", "name", "water", "expansion", "strength"],
    rows: (units) =>
      PLASTERS.map((row) => {
        const { least, most } = row.expansion;
        const strength = units === "in" ? Number((row.strength / MPA_PER_PSI).toPrecision(3)) : row.strength;
        const cells = [row.kind, row.name, row.water, `${least} to ${most}`, strength];
        return { cells, source: row.source, data: row };
      }),
  },
  papers: {
    title: (units) =>
      `Papers, in ${UNITS[units]}; or a size of your own as WIDTHxHEIGHT, or full for one true-size sheet.`,
    head: ["paper", "width", "height"],
    rows: (units) =>
      PAPERS.map((row) => {
        const cells = [row.name, length(row.width, units), length(row.height, units)];
        return { cells, source: row.source, data: row };
      }),
  },
  grains: {
    title: () => "Grains, in µm.",
    head: ["grain", "size"],
    rows: () => GRAINS.map((row) => ({ cells: [row.name, row.size], source: row.source, data: row })),
  },
};

/** Figures of the tables to three decimals, as a person reads them; `--json` has them in full. */
function shown(cell: Cell, decimals = 3): string {
  return typeof cell === "number" ? String(Number(cell.toFixed(decimals))) : cell;
}

/** `casting list`: a built-in table with its sources. */
export function list(table: string, options: { json?: boolean; units?: string }, terminal: Terminal): number {
  const units = unitsOf(options.units);
  const listing = Object.hasOwn(LISTINGS, table) ? LISTINGS[table] : undefined;
  if (!listing) {
    const near = nearest(table, Object.keys(LISTINGS));
    const hint = near ? `did you mean ${near}?` : `choose from ${Object.keys(LISTINGS).join(", ")}`;
    throw usage(`there is no table ${table.slice(0, 40)}; ${hint}`);
  }
  const rows = listing.rows(units);
  if (options.json) {
    terminal.out(planJson({ table, rows: rows.map(({ data }) => data) }));
    return 0;
  }
  const lines = [listing.head, ...rows.map(({ cells }) => cells.map((cell) => shown(cell)))];
  const widths = listing.head.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  const [head, ...body] = lines.map((line) => line.map((cell, column) => cell.padEnd(widths[column]!)).join("  "));
  const sources = [...new Set(rows.map(({ source }) => source))];
  const marks = (source: string) => `[${sources.indexOf(source) + 1}]`;
  terminal.out(`${listing.title(units)}\n\n${head!.trimEnd()}\n`);
  for (const [n, line] of body.entries()) terminal.out(`${line}  ${marks(rows[n]!.source)}\n`);
  terminal.out(`\nSources\n${sources.map((source) => `${marks(source)} ${source}\n`).join("")}`);
  return 0;
}

/** Sizes to four decimals: sixteenths of an inch in mm take as many. */
function sizeOf(piece: (typeof CATALOGUE)[number]["piece"], units: Units): string {
  const mm = (value: number) => (units === "in" ? length(value, units) : shown(value, 4));
  if (piece.shape === "rectangle") return `${mm(piece.length)} x ${mm(piece.width)}`;
  if (piece.shape === "round") return mm(piece.diameter);
  return piece.shape === "polygon" ? "" : mm(piece.across);
}
