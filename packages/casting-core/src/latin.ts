/** Letters that show nothing, break the line, or change how those beside them show: no place for them in a title or a page. The two that choose how a sign is shown (U+FE0E, U+FE0F) are none. */
export const HIDDEN = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}]|(?![\ufe0e\ufe0f])\p{Default_Ignorable_Code_Point}/gu;

/** Signs beyond Latin 1 that the standard fonts of a PDF have (WinAnsi encoding, ISO 32000-1, annex D). */
const SIGNS =
  "\u0152\u0153\u0160\u0161\u0178\u017d\u017e\u0192\u2013\u2014\u2018-\u201a\u201c-\u201e\u2020-\u2022\u2026\u2030\u2039\u203a\u20ac\u2122";
const UNKNOWN = new RegExp(`[^\\u0020-\\u007e\\u00a1-\\u00ff${SIGNS}]`, "gu");

/** What they lack and plainer letters say as well: primes, spaces, hyphens and minus, dashes, diameter, mu, slashes. */
const PLAIN: readonly [RegExp, string][] = [
  [/[\u2032\u02b9]/gu, "'"],
  [/[\u2033\u02ba]/gu, '"'],
  [/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/gu, " "],
  [/[\u2010\u2011\u2212]/gu, "-"],
  [/[\u2012\u2015]/gu, "\u2013"],
  [/[\u2300\u2205]/gu, "\u00d8"],
  [/\u03bc/gu, "\u00b5"],
  [/[\u2044\u2215]/gu, "/"],
];

/** A fraction in one letter, of those that are not in Latin 1, with the digit before it. */
const FRACTION = /(\d?)([\u2150-\u215e])/gu;

function plain(text: string): string {
  // 1⅛ is 1 1/8, not 11/8.
  const spelled = text
    .normalize("NFC")
    .replace(FRACTION, (_, digit: string, sign: string) => `${digit && `${digit} `}${sign.normalize("NFKC")}`);
  return PLAIN.reduce((words, [from, to]) => words.replace(from, to), spelled);
}

/** Nothing but letters that every font has: most texts. */
const ASCII = /^[\u0020-\u007e]*$/;

/** `text` in the letters that the printed pages can show: plainer ones where those say the same, else question marks. */
export function latin(text: string): string {
  return ASCII.test(text) ? text : plain(text).replace(UNKNOWN, "?");
}

/** The letters of `text`, each once, for which the printed pages have a question mark. */
export function unprinted(text: string): string[] {
  return [...new Set(plain(text).match(UNKNOWN))];
}
