// The files of a set against each other: every one shows the pieces of the plan at the very same micrometres.
import { readDxf } from "./dxf.mjs";
import { gapAndRimFaults, shapeOfPiece } from "./layout.mjs";
import { planFaults } from "./plan.mjs";
import { readSheet } from "./svg.mjs";
import { readTemplates } from "./templates.mjs";

/** What is read back: what is asked for with `--only`. */
export const READ = ["plan.json", "placement.svg", "grooves.svg", "grooves.dxf", "templates.pdf", "pieces.csv"];

/** A page's scale is written with six decimals. */
const SCALE = 2e-7;

/** What does not hold of a set of files, one sentence each; `read` gives a file's bytes, `items` sizes by name. */
export function setFaults(read, items) {
  const text = (name) => read(name).toString("utf8");
  const plan = JSON.parse(text("plan.json"));
  const faults = [];
  const look = (name, found) => {
    try {
      faults.push(...found().map((fault) => `${name}: ${fault}`));
    } catch (error) {
      faults.push(`${name}: could not be read: ${error.message}`);
    }
  };
  look("plan.json", () => planFaults(plan, items));
  look("placement.svg", () => sheetFaults(plan, readSheet(text("placement.svg"), false)));
  for (const [name, sheet] of [
    ["grooves.svg", () => readSheet(text("grooves.svg"), true)],
    ["grooves.dxf", () => readDxf(text("grooves.dxf"))],
  ]) {
    look(name, () => {
      const drawn = sheet();
      return [...sheetFaults(plan, drawn), ...lineFaults(plan, drawn)];
    });
  }
  look("pieces.csv", () => tableFaults(plan, text("pieces.csv")));
  for (const mirrored of [false, true]) look("templates.pdf", () => pageFaults(plan, read("templates.pdf"), mirrored));
  return faults;
}

/** Gap and rim on what was read, and each piece against the plan's. */
function sheetFaults({ layout, tool }, { toolRadius, pieces }) {
  const faults = gapAndRimFaults(pieces, { ...layout, ...tool });
  if (Math.abs(toolRadius - tool.diameter / 2) > 6e-7) faults.push(`the tool's radius is ${toolRadius} mm`);
  if (pieces.length !== layout.pieces.length)
    return [...faults, `${pieces.length} pieces are drawn, not ${layout.pieces.length}`];
  layout.pieces.forEach((piece, n) => {
    const { id, corners, centre, radius } = pieces[n];
    const drawn = radius === undefined ? { corners } : { centre, radius };
    const wanted =
      piece.radius === undefined ? { corners: piece.outline } : { centre: [piece.x, piece.y], radius: piece.radius };
    if (id !== piece.id || JSON.stringify(drawn) !== JSON.stringify(wanted))
      faults.push(`piece ${piece.id} is not drawn where the plan lays it`);
  });
  return faults;
}

/** Each channel's middle line, point by point. */
function lineFaults({ grooves }, { cut, uncut }) {
  const key = (lines) => lines.map((line) => JSON.stringify(line)).join("\n");
  const wanted = (isCut) => key(grooves.edges.filter((edge) => edge.cut === isCut).map(({ points }) => points));
  return [
    ...(key(cut) === wanted(true) ? [] : ["the channels are not drawn where the plan cuts them"]),
    ...(uncut === undefined || key(uncut) === wanted(false)
      ? []
      : ["the lines left uncut are not where the plan has them"]),
  ];
}

function tableFaults({ layout }, csv) {
  const rows = csv.trim().split("\r\n").slice(1);
  if (rows.length !== layout.pieces.length) return [`${rows.length} pieces are listed, not ${layout.pieces.length}`];
  return layout.pieces.flatMap(({ id, kind, item = "", x, y, angle }, n) => {
    const [rowId, rowKind, rowItem, ...place] = rows[n].split(",");
    const [rowX, rowY, rowAngle] = place.map(Number);
    const same = Number(rowId) === id && Number(rowKind) === kind && rowItem === item && rowX === x && rowY === y;
    return same && Math.abs(rowAngle - angle) <= 0.000501 ? [] : [`piece ${id} is not listed where the plan lays it`];
  });
}

/** Every page that shows pieces or channels: what it draws is the plan's, and all that it shows is drawn. */
function pageFaults(plan, bytes, mirrored) {
  const { measured } = plan.job.print;
  const correction = measured && { x: 100 / measured.x, y: 100 / measured.y };
  const pages = readTemplates(bytes, { mirrored, correction });
  const what = mirrored ? "channels" : "placement";
  if (pages.length === 0) return [`no page shows the ${what}`];
  const pieces = plan.layout.pieces.map((piece) => ({ ...shapeOfPiece(piece), points: piece.outline }));
  const channels = plan.grooves.edges.flatMap(({ cut, points }) => (cut ? [{ points }] : []));
  const faults = pages.flatMap((page, n) => {
    const found = [
      ...gapAndRimFaults(page.pieces, { ...plan.layout, ...plan.tool }),
      ...drawnFaults("piece", page.pieces, pieces, page.window),
      ...(mirrored
        ? drawnFaults(
            "channel",
            page.cut.map((points) => ({ points })),
            channels,
            page.window,
          )
        : []),
      ...(page.off > SCALE ? [`it is off its scale by ${page.off}`] : []),
    ];
    return found.map((fault) => `page ${n + 1} of the ${what}: ${fault}`);
  });
  const shown = (point) => pages.some(({ window }) => isShown(point, window, 0));
  const lost = pieces.findIndex(({ points }) => !points.every(shown));
  return lost < 0 ? faults : [...faults, `piece ${lost + 1} is not wholly on the pages of the ${what}`];
}

/** What is drawn but not planned, at the very same numbers, and what is planned and shown but not drawn. */
function drawnFaults(what, drawn, planned, window) {
  const key = ({ corners, centre, radius, points }) =>
    JSON.stringify(radius === undefined ? (corners ?? points) : [centre, radius]);
  const left = new Map(planned.map((one, n) => [key(one), n]));
  const faults = drawn
    .filter((one) => !left.delete(key(one)))
    .map((one) => `a ${what} is drawn where the plan has none: ${key(one).slice(0, 60)}`);
  for (const n of left.values())
    if (planned[n].points.some((point) => isShown(point, window, 0.1))) faults.push(`${what} ${n + 1} is not drawn`);
  return faults;
}

/** Whether a point lies in a page's window, and so far from its sides, mm. */
function isShown([x, y], window, inside) {
  if (!window) return true;
  const { left, right, low, high } = window;
  return x >= left + inside && x <= right - inside && y >= low + inside && y <= high - inside;
}
