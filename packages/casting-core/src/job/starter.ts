/** The text of a starter job, to be written into `file`: it can be made as it stands, and each line says what to change. */
export function starterJob(file = "job.yaml"): string {
  return `# A job for casting. Change the figures to yours, then run:  casting make ${file.replace(/\s+/g, " ")}
# A length is a number with its unit: 32 mm, 3.2cm, 5/8", 1 1/4 in. A bare number is in "units".

title: My first tool
units: mm                     # or in

blank:                        # the glass as it is now
  diameter: 200 mm
  curve: concave              # concave, convex or flat
  radius: 1600 mm             # or focal-ratio: 4, or sagitta: 3.1 mm
  # target: {radius: 1500 mm} # the curve that is wanted
  # thickness: 30 mm
  # bevel: 2 mm

tool:
  diameter: 150 mm            # default: three quarters of the blank
  rim: 3 mm                   # kept free of pieces at the edge

pieces:                       # casting list pieces shows what can be bought
  shape: square               # hexagon, square, triangle, rectangle, round or polygon
  across: 15 mm               # measure one of your own
  thickness: 5 mm
  density: 2.35               # kg/L

layout:
  gap: 4 mm                   # least distance between pieces: the cutter and twice the clearance
  seed: 1                     # another number is another layout
  hand: 0.5 mm                # how truly you lay a piece

grooves:
  cutter: 3 mm
  depth: 2 mm
  clearance: 0.5 mm

plaster:
  kind: type-3                # casting list plasters
  fill: auto                  # thickest piece and cover; or a height above the glass
  cover: 20 mm
  spare: 10%

container: {shape: round, diameter: 150 mm, height: 180 mm, headroom: 20 mm}   # what you mix in, inside

print: {paper: A4}            # casting list papers
`;
}
