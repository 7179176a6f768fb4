import type { Fault } from "../errors.js";
import { hypot } from "../trig.js";
import { fault, mmIn } from "./fault.js";
import {
  bevelFaults,
  blankDepthFaults,
  chordFaults,
  curveFaults,
  flatTargetFaults,
  readingFaults,
  targetFaults,
} from "./rules-blank.js";
import { headroomFaults, markFaults, plasterFaults, socketFaults, socketOnToolFaults } from "./rules-pour.js";
import { gradeFaults, rateFaults } from "./rules-setup.js";
import type { Path } from "./tree.js";
import type { Job, JobPiece } from "./types.js";
import { faultsOfEach, guardUnread, unlessUnread } from "./unread.js";

const RULES: readonly ((job: Job) => Fault[])[] = [
  curveFaults,
  chordFaults,
  blankDepthFaults,
  flatTargetFaults,
  targetFaults,
  readingFaults,
  bevelFaults,
  toolFaults,
  rimFaults,
  pieceFaults,
  clearFaults,
  shareFaults,
  plasterFaults,
  headroomFaults,
  markFaults,
  socketFaults,
  socketOnToolFaults,
  gradeFaults,
  rateFaults,
];

/**
 * What a job's figures may not say together; each rule names the key to change. A rule that looks at a path of `unread`
 * is left out: a fault that only follows from another says nothing.
 */
export function ruleFaults(job: Partial<Job>, unread: readonly Path[]): Fault[] {
  // What is not there is unread, and throws.
  const seen = (unread.length > 0 ? guardUnread(job, unread) : job) as Job;
  return RULES.flatMap((faults) => unlessUnread(() => faults(seen)));
}

function toolFaults({ blank, tool, units }: Pick<Job, "blank" | "tool" | "units">): Fault[] {
  if (tool.diameter <= blank.diameter) return [];
  const mm = mmIn(units);
  const text = `a tool of ${mm(tool.diameter)} is wider than the blank of ${mm(blank.diameter)}; check both figures and their units`;
  return [fault(["tool", "diameter"], text)];
}

function rimFaults({ tool, units }: Pick<Job, "tool" | "units">): Fault[] {
  if (2 * tool.rim < tool.diameter) return [];
  const mm = mmIn(units);
  const text = `a rim of ${mm(tool.rim)} leaves nothing of a tool of ${mm(tool.diameter)}; write a smaller one`;
  return [fault(["tool", "rim"], text)];
}

function pieceFaults({ tool, pieces, units }: Pick<Job, "tool" | "pieces" | "units">): Fault[] {
  // The rim itself is wrong then.
  if (2 * tool.rim >= tool.diameter) return [];
  const mm = mmIn(units);
  const inside = tool.diameter - 2 * tool.rim;
  return faultsOfEach(pieces, (piece, index) => {
    const [key, size] = widest(piece) ?? [];
    if (key === undefined || size === undefined || size <= inside) return [];
    const text =
      size > tool.diameter
        ? `a piece of ${mm(size)} is larger than the tool of ${mm(tool.diameter)}; check both figures and their units`
        : `a piece of ${mm(size)} is larger than the ${mm(inside)} within the rim of ${mm(tool.rim)}; take a smaller piece, or write a smaller tool.rim`;
    return [fault(["pieces", index, key], text)];
  });
}

function clearFaults({ tool, layout, units }: Pick<Job, "tool" | "layout" | "units">): Fault[] {
  const mm = mmIn(units);
  return faultsOfEach(layout["keep-clear"], ({ x, y, diameter }, index) => {
    if (hypot(x, y) + tool.diameter / 2 > diameter / 2) return [];
    const text = `a circle of ${mm(diameter)} to be kept clear covers the tool of ${mm(tool.diameter)}; write a smaller one`;
    return [fault(["layout", "keep-clear", index, "diameter"], text)];
  });
}

function widest(piece: JobPiece): [string, number] | undefined {
  if ("item" in piece || piece.shape === "polygon") return undefined;
  if (piece.shape === "rectangle")
    return piece.length >= piece.width ? ["length", piece.length] : ["width", piece.width];
  return piece.shape === "round" ? ["diameter", piece.diameter] : ["across", piece.across];
}

function shareFaults({ pieces }: Pick<Job, "pieces">): Fault[] {
  const shares = pieces.flatMap(({ share }) => (share === undefined ? [] : [share]));
  const sum = shares.reduce((total, share) => total + share, 0);
  const percent = `${Number((sum * 100).toPrecision(6))} %`;
  if (sum > 1 + 1e-9) return [fault(["pieces"], `the shares come to ${percent}, more than 100 %; lower them`)];
  if (shares.length === pieces.length && sum < 1 - 1e-9) {
    return [fault(["pieces"], `the shares come to ${percent}, less than 100 %; raise them, or leave one out`)];
  }
  return [];
}
