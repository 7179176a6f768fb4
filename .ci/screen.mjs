// What `npm start` shows of what `casting make` says: one screen.

/** The figures shown, by their first words; the job sheet has them all. */
const SHOWN = /^(blank|tool|pieces|least gap|fill line|weigh out|batch \d+|in the container|channels) {2,}/;

/**
 * Every caution and warning of `notes`; of `figures` the title and the first that are asked; at the end what was written,
 * and where to look first.
 */
export function screenOf(figures, notes) {
  const [title, ...rows] = figures.trimEnd().split("\n");
  const said = notes.split("\n").filter((line) => line !== "");
  const shown = said.filter((line) => !line.startsWith("info: "));
  const left = said.length - shown.length;
  const more = left === 0 ? "" : ` and ${left} more ${left === 1 ? "note" : "notes"}`;
  return `${[
    ...shown,
    "",
    title,
    ...rows.slice(0, -1).filter((row) => SHOWN.test(row)),
    "",
    rows.at(-1),
    `The job sheet has all figures${more}.`,
  ].join("\n")}\n`;
}
