import { tellsDirections } from "../blank/astigmatism.js";
import type { Measured } from "../blank/types.js";
import { radiusWriter, uncertaintyText } from "../blank/words.js";
import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { cos, radians, sin } from "../trig.js";
import { apartText, axisText, countText, fixed } from "../units/figure-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { circle, FIRM, line, type Shape, type Sheet, THIN, text } from "./sheet.js";

/** A map of the spherometer's readings over the blank: each at its place, how far off the mean; nothing without readings. */
export function readingsSheet(plan: Plan): Sheet | undefined {
  const { blank, job } = plan;
  const { measured } = blank;
  if (!measured) return undefined;
  const size = Math.max(3, blank.diameter / 50);
  const across = blank.diameter + 2 * MARGIN + 12;
  const width = Math.max(across, BLOCK_WIDTH);
  const centre: Point = [width / 2, across / 2];
  const shapes: Shape[] = [
    circle(centre, blank.diameter / 2, FIRM),
    line([centre[0], centre[1] - blank.diameter / 2], [centre[0], centre[1] - blank.diameter / 2 - 6], FIRM),
  ];
  const labels: Shape[] = [];
  const taken: Point[] = [];
  for (const { at, angle = 0, along, off } of measured.zones) {
    const turn = radians(angle);
    const place: Point = [centre[0] + at * cos(turn), centre[1] - at * sin(turn)];
    shapes.push(circle(place, 1, THIN));
    // Readings at the same place are listed below each other.
    const wide = size * (along === undefined ? 3 : 8);
    const above = taken.filter(([x, y]) => Math.abs(x - place[0]) < wide && Math.abs(y - place[1]) < size).length;
    taken.push(place);
    const bar = along === undefined ? "" : ` along ${fixed(along, 0)}°`;
    const words = `${off > 0 ? "+" : ""}${job.units === "in" ? fixed(off / 25.4, 2) : fixed(off, 1)}${bar}`;
    labels.push(text([place[0] + 2, place[1] - 1.5 + above * size * 1.2], words, size));
  }
  const spread =
    measured.spread === undefined ? "spread unknown" : `standard deviation ${apartText(measured.spread, job.units)}`;
  const {
    labels: words,
    check,
    facts,
  } = block(plan, across, width, [
    `READINGS over the blank, in ${job.units === "in" ? "thousandths of an inch" : "µm"} against their mean: plus is ${blank.curve === "convex" ? "higher, the dome steeper" : "deeper"}. Seen on its face; the mark at the top is 90 degrees, counter-clockwise from the right.`,
    `Radius ${radiusWriter(measured)(measured.radius, job.units)}, standard uncertainty ${uncertaintyText(measured, job.units)}; ${countText(measured.readings, "reading")}, ${spread}.`,
    astigmatismWords(plan, measured),
  ]);
  return {
    name: "readings",
    width,
    height: across + BLOCK_HEIGHT + MARGIN,
    caption: "map of the readings over the blank",
    facts,
    bodyHeight: across,
    groups: [{ id: "marks", shapes }, { id: "labels", shapes: [...labels, ...words] }, check],
  };
}

function astigmatismWords({ blank: { curve }, job }: Plan, { astigmatism, zones }: Measured): string {
  if (astigmatism)
    return `Astigmatism: readings swing ${apartText(astigmatism.amount, job.units)} to either side of their mean (give or take ${apartText(astigmatism.uncertainty, job.units)}), ${curve === "convex" ? "steepest" : "deepest"} along ${axisText(astigmatism.deepest)} degrees.`;
  if (job.blank.readings?.instrument.bar === undefined)
    return "A ring or three legs see the mean curvature: differences are unevenness; for astigmatism lay a bar in three directions.";
  return tellsDirections(zones)
    ? "No astigmatism shows beyond the error of the readings."
    : "For astigmatism lay the bar in three directions.";
}
