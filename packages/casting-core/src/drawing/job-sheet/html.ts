import { HIDDEN } from "../../latin.js";
import { unbroken } from "../letters.js";
import { STYLE } from "./style.js";

/** Nothing is loaded and nothing runs. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** A page complete in itself; `title` is HTML text, `body` HTML, `style` is added to the common look. */
export function htmlPage(title: string, body: string, style = ""): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>${title}</title>
<style>${STYLE}${style}</style>
</head>
<body>
${body}</body>
</html>
`;
}

/** The job's title as HTML text, no longer than a heading bears. */
export function shortTitle(title: string): string {
  return escaped(title.length > 200 ? `${title.slice(0, 199)}…` : title);
}

/**
 * Text as HTML text or as an attribute in double quotes: nothing in it is read as markup, and no line breaks within a
 * figure, whose 1 1/8 would be read as 1, and 1/8 on the next.
 */
export function escaped(text: string): string {
  return unbroken(text.replace(HIDDEN, " "))
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** A section with its heading; `body` is HTML. */
export function section(id: string, heading: string, body: string): string {
  return `<section aria-labelledby="${id}">\n<h2 id="${id}">${escaped(heading)}</h2>\n${body}</section>\n`;
}

/** A table of two columns: what it is, and its figure. */
export function figuresTable(caption: string, rows: readonly (readonly [string, string])[]): string {
  const body = rows.map(
    ([what, figure]) => `<tr><th scope="row">${escaped(what)}</th><td>${escaped(figure)}</td></tr>\n`,
  );
  return `<table><caption>${escaped(caption)}</caption>\n<tbody>\n${body.join("")}</tbody></table>\n`;
}

/** So many columns fit side by side on a phone; a table of more is folded there, each figure beside its heading. */
const ABREAST = 4;

/** A table with a heading for each column. */
export function gridTable(caption: string, heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const folds = heads.length > ABREAST;
  const named = (column: number) => (folds ? ` data-head="${escaped(heads[column] ?? "")}"` : "");
  const head = heads.map((text) => `<th scope="col">${escaped(text)}</th>`).join("");
  const body = rows.map(([first = "", ...rest]) => {
    const cells = rest.map((text, n) => `<td${named(n + 1)}>${escaped(text)}</td>`).join("");
    return `<tr><th scope="row"${named(0)}>${escaped(first)}</th>${cells}</tr>\n`;
  });
  return `<div class="wide" role="group" aria-label="${escaped(caption)}" tabindex="0"><table class="grid${folds ? " folds" : ""}"><caption>${escaped(caption)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join("")}</tbody></table></div>\n`;
}

/** A list of sentences. */
export function list(items: readonly string[]): string {
  return `<ul>\n${items.map((item) => `<li>${escaped(item)}</li>\n`).join("")}</ul>\n`;
}

/** A picture with the words below it; `svg` is an SVG element. */
export function picture(svg: string, words: string, small = false): string {
  return `<figure${small ? ' class="small"' : ""}>\n${svg.replace(/^<\?xml[^>]*\?>\s*/, "")}<figcaption>${escaped(words)}</figcaption>\n</figure>\n`;
}
