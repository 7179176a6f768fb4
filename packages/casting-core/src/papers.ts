/** A paper by name, upright, mm. */
export interface Paper {
  name: string;
  width: number;
  height: number;
  source: string;
}

const ISO = "ISO 216:2007";
const ANSI = "ANSI/ASME Y14.1";
const US = "US office paper, 8 1/2 x 14 in; common practice";

/** Papers that sheets are tiled for. */
export const PAPERS: readonly Paper[] = [
  { name: "A4", width: 210, height: 297, source: ISO },
  { name: "A3", width: 297, height: 420, source: ISO },
  { name: "A2", width: 420, height: 594, source: ISO },
  { name: "A1", width: 594, height: 841, source: ISO },
  { name: "A0", width: 841, height: 1189, source: ISO },
  { name: "Letter", width: 215.9, height: 279.4, source: ANSI },
  { name: "Legal", width: 215.9, height: 355.6, source: US },
  { name: "Tabloid", width: 279.4, height: 431.8, source: ANSI },
];

/** The paper called `name`, in any case, if there is one. */
export function paperNamed(name: string): Paper | undefined {
  return PAPERS.find((paper) => paper.name.toLowerCase() === name.toLowerCase());
}
