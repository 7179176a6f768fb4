import { documentOf } from "./document.js";
import type { Units } from "./types.js";

/** What a starter says in either unit. */
const FIGURES = {
  mm: {
    units: "units: mm                     # or in",
    blank: ["200 mm", "1600 mm", "3.1 mm", "1500 mm", "30 mm", "2 mm"],
    tool: ["150 mm", "3 mm"],
    piece: ["15 mm", "5 mm"],
    gap: "4 mm",
    hand: "0.5 mm",
    grooves: ["3 mm", "2 mm", "0.5 mm"],
    cover: "20 mm",
    container: "diameter: 150 mm, height: 180 mm, headroom: 20 mm",
    paper: "A4}            #",
  },
  in: {
    units: "units: in                     # or mm",
    blank: ["8 in", "64 in", "1/8 in", "60 in", "1 1/4 in", "1/16 in"],
    tool: ["6 in", "1/8 in"],
    piece: ["5/8 in", "3/16 in"],
    gap: "5/32 in",
    hand: "1/64 in",
    grooves: ["1/8 in", "5/64 in", "1/64 in"],
    cover: "3/4 in",
    container: "diameter: 6 in, height: 7 in, headroom: 3/4 in",
    paper: "Letter}        #",
  },
} as const;

/**
 * The text of a starter job in `units`, to be written into `file`: it can be made as it stands, and each line says what to
 * change. In a file that ends in `.json` it is JSON, which has no room for such words.
 */
export function starterJob(file = "job.yaml", units: Units = "mm"): string {
  const text = commented(file, units);
  return /\.json$/i.test(file) ? `${JSON.stringify(documentOf(text).document.toJS(), null, 2)}\n` : text;
}

function commented(file: string, units: Units): string {
  const { blank, tool, piece, grooves, ...own } = FIGURES[units];
  const at = (key: string, figure: string) => `${key}: ${figure}`.padEnd(27);
  return `# A job for casting. Change the figures to yours, then run:  casting make ${file.replace(/\s+/g, " ")}
# A length is a number with its unit: 32 mm, 3.2cm, 5/8", 1 1/4 in. A bare number is in "units".

title: My first tool
${own.units}

blank:                        # the glass as it is now
  diameter: ${blank[0]}
  curve: concave              # concave, convex or flat
  ${at("radius", blank[1])} # or focal-ratio: 4, or sagitta: ${blank[2]}
  ${`# target: {radius: ${blank[3]}}`.padEnd(27)} # the curve that is wanted
  # thickness: ${blank[4]}
  # bevel: ${blank[5]}

tool:
  ${at("diameter", tool[0])} # default: three quarters of the blank
  ${at("rim", tool[1])} # kept free of pieces at the edge

pieces:                       # casting list pieces shows what can be bought
  shape: square               # hexagon, square, triangle, rectangle, round or polygon
  ${at("across", piece[0])} # measure one of your own
  thickness: ${piece[1]}
  density: 2.35               # kg/L

layout:
  ${at("gap", own.gap)} # least distance between pieces: the cutter and twice the clearance
  seed: 1                     # another number is another layout
  ${at("hand", own.hand)} # how truly you lay a piece

grooves:
  cutter: ${grooves[0]}
  depth: ${grooves[1]}
  clearance: ${grooves[2]}

plaster:
  kind: type-3                # casting list plasters
  fill: auto                  # thickest piece and cover; or a height above the glass
  cover: ${own.cover}
  spare: 10%

container: {shape: round, ${own.container}}   # what you mix in, inside

print: {paper: ${own.paper} casting list papers
`;
}
