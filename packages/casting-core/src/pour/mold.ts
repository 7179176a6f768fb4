import { capVolume } from "../blank/sphere.js";
import type { Blank, Tool } from "../blank/types.js";
import { CastingError, impossible } from "../errors.js";
import type { JobSocket, Units } from "../job/types.js";
import { PI } from "../trig.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { lengthText } from "../units/length-text.js";
import type { PourJob } from "./pour.js";
import type { Pour, PourSocket } from "./types.js";

/**
 * The fill line above the glass, mm. `auto` puts film, thickest piece and cover at the shallowest place: the tool's
 * edge on concave glass, its centre on convex. Throws `impossible` where a convex blank rises through the fill line,
 * `invalid` where the line does not reach over the thickest piece.
 */
export function fillOf(
  job: Pick<PourJob, "plaster" | "units">,
  blank: Blank,
  tool: Tool,
  thickest: number,
): Pour["fill"] {
  const { plaster, units } = job;
  const [over, under] = [(mm: number) => atLeast(mm, units), (mm: number) => atMost(mm, units)];
  const rise = blank.curve === "convex" ? -tool.sagitta : tool.sagitta;
  const { film = 0 } = plaster;
  const top = film + thickest;
  const edge = plaster.fill === "auto" ? top + plaster.cover - Math.min(0, rise) : plaster.fill;
  const centre = edge + rise;
  if (!(centre > 0)) {
    throw impossible(
      ["plaster", "fill"],
      `the glass rises ${over(tool.sagitta)} at the centre, through the fill line of ${under(edge)}; fill to more than ${over(tool.sagitta + top)}`,
    );
  }
  const cover = Math.min(edge, centre) - top;
  if (!(cover > 0)) {
    const text = `the fill line stands ${under(Math.min(edge, centre))} above the glass at its shallowest, not over the thickest piece of ${over(thickest)}${film > 0 ? ` on a film of ${over(film)}` : ""}; raise it, or write auto`;
    throw new CastingError("invalid", [{ path: ["plaster", "fill"], text }]);
  }
  return { edge, centre, cover };
}

/** Volume between the glass and the fill line inside the tool's circle, mL: π r² × edge ± the cap of the circle. */
export function moldVolume(blank: Blank, tool: Tool, edge: number): number {
  const r = tool.diameter / 2;
  const cap = tool.curveRadius === undefined ? 0 : capVolume(tool.curveRadius, r);
  return (PI * r * r * edge + (blank.curve === "convex" ? -cap : cap)) / 1000;
}

/**
 * How the socket stands in the cast: its foot on the thickest piece or on the film over the glass. Throws `invalid` for one that is
 * wider than the tool or whose bore is not inside it.
 */
export function socketOf(
  socket: JobSocket,
  tool: Tool,
  { film, thickest, centre }: { film: number; thickest: number; centre: number },
  units: Units,
): PourSocket {
  const length = (mm: number): string => lengthText(mm, units);
  if (socket.diameter >= tool.diameter) {
    const text = `a socket of ${length(socket.diameter)} does not fit in a tool of ${length(tool.diameter)}; take a smaller one`;
    throw new CastingError("invalid", [{ path: ["socket", "diameter"], text }]);
  }
  if (socket.bore !== undefined && socket.bore >= socket.diameter) {
    const text = `a bore of ${length(socket.bore)} leaves no wall in a socket of ${length(socket.diameter)}; measure again`;
    throw new CastingError("invalid", [{ path: ["socket", "bore"], text }]);
  }
  const foot = film + (socket.foot === "glass" ? 0 : thickest);
  const embedded = Math.min(socket.length, centre - foot);
  return { foot, embedded, projecting: foot + socket.length - centre };
}

/** What the socket displaces below the fill line, mL: its whole cylinder if plugged, else less the bore. */
export function socketVolume(socket: JobSocket, { embedded }: PourSocket): number {
  const bore = socket.plugged ? 0 : (socket.bore ?? 0);
  return ((PI / 4) * (socket.diameter * socket.diameter - bore * bore) * embedded) / 1000;
}
