/** Widths of ASCII letters 32 to 126 in thousandths of the em: Helvetica, Adobe font metrics (value from memory). */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
/** Any other letter is taken as wide as the widest: what fits by this measure fits. */
const OTHER = 1015;

/** What stays with the figure before it, on one line: its fraction, its unit. */
const REST =
  "(?<=(?:\\d|\\bUS|\\bfl) )(?:\\d+\\/\\d+|in|mm|µm|m|kg|g|lb|oz|%|kPa|psi|°[CF]|K|US|mL|L|qt|fl)(?![\\p{L}\\d])";
const BREAK = new RegExp(` (?!${REST})`, "u");
const WITHIN = new RegExp(` (?=${REST})`, "gu");

/** `text` with spaces that break no line inside its figures, for what others break into lines. */
export function unbroken(text: string): string {
  return text.replace(WITHIN, "\u00a0");
}

/** Width of a line of text in mm, at `size` mm. Other sans-serif faces come within a seventh of it (DejaVu Sans, measured). */
export function textWidth(text: string, size: number): number {
  let width = 0;
  for (const letter of text) width += WIDTHS[letter.codePointAt(0)! - 32] ?? OTHER;
  return (width / 1000) * size;
}

/** `text` shortened with … to what fits into `width` mm at `size` mm. */
export function fitted(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = [...text.slice(0, 1000)];
  while (letters.length > 0 && textWidth(`${letters.join("")}…`, size) > width) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}

/** `text` broken into lines of at most `width` mm. */
export function wrapped(text: string, size: number, width: number): string[] {
  return broken(text, (line) => textWidth(line, size) <= width).map((part) => fitted(part, size, width));
}

/** `text` broken between words and figures into lines that `fits`, each given with its number from 0 on; one word may not. */
export function broken(text: string, fits: (line: string, n: number) => boolean): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(BREAK)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && !fits(longer, lines.length)) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}
