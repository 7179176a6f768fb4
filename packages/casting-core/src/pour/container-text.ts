import { CastingError } from "../errors.js";
import type { JobContainer, Units } from "../job/types.js";
import { nearest } from "../nearest.js";
import { parseLength, parseVolume, shown } from "../units/parse.js";

/** A longer text describes no container. */
const LONGEST = 2000;

/** What follows the shape's name, in order; a height may be left out where it only limits. */
const SIZES = {
  round: { needed: ["diameter"], optional: ["height", "headroom"] },
  tapered: { needed: ["bottom", "top", "height"], optional: ["headroom"] },
  box: { needed: ["length", "width"], optional: ["height", "headroom"] },
} as const;

/** A length with its unit, or bare: what stands between two sizes is a space, a comma or an x. */
const LENGTH = /(?:(?:\d{1,6}[\s-])?\d{1,6}\/\d{1,4}|\d{1,6}(?:\.\d{1,6})?)\s*(?:mm|cm|m|in|ft|"|')?(?=$|[\s,x×])/giu;

/**
 * A container from one line: `round 230mm`, `round 230mm x 240mm`, `tapered 180mm 220mm 250mm` (bottom, top, height),
 * `box 300mm 200mm 250mm`, `marks 50mm=1L 100mm=2.1L`; a headroom may follow. Throws `invalid` for all else.
 */
export function containerFromText(text: string, units: Units): JobContainer {
  if (text.length > LONGEST)
    throw refused(`its text has ${text.length} letters, more than ${LONGEST}; write fewer marks`);
  const [, shape = "", rest = ""] = /^\s*([a-z]*)\s*(.*)$/is.exec(text) ?? [];
  if (shape === "marks") return marked(rest, units);
  if (shape !== "round" && shape !== "tapered" && shape !== "box") {
    const near = nearest(shape, [...Object.keys(SIZES), "marks"]);
    throw refused(
      `${shown(text)} has no known shape; ${near ? `did you mean ${near}?` : "write round, tapered, box or marks first"}`,
    );
  }
  const comma = /\d+,\d+/.exec(rest)?.[0];
  if (comma !== undefined) {
    throw refused(
      `${shown(comma)} may be one size or two; write ${comma.replace(",", ".")} with a point, or a space between two sizes`,
    );
  }
  const { needed, optional } = SIZES[shape];
  const names: readonly string[] = [...needed, ...optional];
  const sizes = rest.match(LENGTH) ?? [];
  const left = rest.replace(LENGTH, "").replace(/[\s,x×]/gi, "");
  if (left !== "" || sizes.length < needed.length || sizes.length > names.length) {
    throw refused(
      `${shown(text)} is not a ${shape} container; write ${shape} and its inside ${needed.join(", ")}, then ${optional.join(", ")} if wanted`,
    );
  }
  const given: Record<string, number> = {};
  sizes.forEach((size, index) => {
    const value = parseLength(size, units);
    const name = names[index]!;
    if (!(value > 0) && name !== "headroom")
      throw refused(`its ${name} of ${shown(size)} is not more than 0; write the inside size`);
    given[name] = value;
  });
  return checked({ headroom: 0, height: Infinity, ...given, shape } as unknown as JobContainer);
}

function marked(rest: string, units: Units): JobContainer {
  const [low, high] = units === "in" ? ["2in=1qt", "4in=2.1qt"] : ["50mm=1L", "100mm=2.1L"];
  const marks = rest
    .split(/\s+(?=\S+=)/)
    .filter((part) => part !== "")
    .map((part) => {
      const [height, volume, more] = part.split("=");
      if (!height || !volume || more !== undefined)
        throw refused(`${shown(part)} is not a mark; write HEIGHT=VOLUME, such as ${low}`);
      return { height: parseLength(height, units), volume: parseVolume(volume) };
    });
  const last = marks.at(-1);
  if (!last) throw refused(`the marks are missing; write them as HEIGHT=VOLUME, such as marks ${low} ${high}`);
  marks.forEach((mark, index) => {
    const before = marks[index - 1] ?? { height: 0, volume: 0 };
    if (mark.height > before.height && mark.volume > before.volume) return;
    throw refused(`mark ${index + 1} does not rise above the one before; write each with more height and volume`);
  });
  return { shape: "marks", marks, height: last.height, headroom: 0 };
}

function checked(container: JobContainer): JobContainer {
  if (container.headroom < container.height) return container;
  throw refused("the headroom leaves nothing of the container's height; write less headroom");
}

function refused(text: string): CastingError {
  return new CastingError("invalid", [{ path: ["container"], text }]);
}
