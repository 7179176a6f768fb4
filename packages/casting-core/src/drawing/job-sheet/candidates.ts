import type { PartialPlan } from "../../plan/make.js";
import type { Plan } from "../../plan/types.js";
import { countText, fixed, shareText } from "../../units/figure-text.js";
import { lengthText } from "../../units/length-text.js";
import type { Sheet } from "../sheet.js";
import { htmlPage, picture, shortTitle } from "./html.js";
import { layoutPicture } from "./pictures.js";

/** The layouts of several seeds side by side with their figures, on one page complete in itself. */
export function candidatesHtml(plans: readonly PartialPlan[], draw: (sheet: Sheet) => string): string {
  const { job } = plans[0]!;
  const title = `Layouts to choose from: ${shortTitle(job.title)}`;
  const cards = plans.map((part) => {
    const plan = part as Pick<Plan, "tool" | "layout" | "job">;
    const { quality, seed } = plan.layout;
    const words = [
      countText(quality.count, "piece"),
      `coverage ${shareText(quality.coverage)}`,
      ...(quality.gapMin === undefined ? [] : [`least gap ${lengthText(quality.gapMin, job.units)}`]),
      `ring to ring ${shareText(quality.radialVariation)}`,
      `likeness ${fixed(quality.symmetry, 3)}`,
      `zoning ${shareText(quality.zoning)}`,
    ].join(", ");
    // Groups are told apart by the seed: an id may stand once on a page.
    const svg = draw(layoutPicture(plan)).replace(/ id="([a-z-]+)"/g, ` id="$1-${seed}"`);
    return `<section aria-labelledby="seed-${seed}">\n<h2 id="seed-${seed}">Seed ${seed}</h2>\n${picture(svg, words)}</section>\n`;
  });
  const body = `<header><h1>${title}</h1>
<p>Choose one by eye: no rows, no rings, no large holes. Then write its seed into the job.</p></header>
<main>
${cards.join("")}</main>
`;
  return htmlPage(title, body, LOOK);
}

/** As many pictures in a row as the screen has room for. */
const LOOK = `body { max-width: 90rem; }
main { display: grid; grid-template-columns: repeat(auto-fill, minmax(18rem, 1fr)); gap: 0 1.5rem; }
`;
