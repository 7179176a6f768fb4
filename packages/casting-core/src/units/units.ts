/** mm in one of each; exact by definition (NIST SP 811, appendix B). */
export const LENGTHS: Record<string, number> = {
  mm: 1,
  cm: 10,
  m: 1000,
  µm: 0.001,
  μm: 0.001,
  um: 0.001,
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  ft: 304.8,
  "'": 304.8,
};

/** mL in one of each; the US gallon is 231 in³ exactly, a quart its quarter, a fluid ounce its 128th part. */
export const VOLUMES: Record<string, number> = {
  mL: 1,
  ml: 1,
  L: 1000,
  l: 1000,
  "in³": 16.387064,
  in3: 16.387064,
  "cu in": 16.387064,
  "US fl oz": 29.5735295625,
  "fl oz": 29.5735295625,
  "US qt": 946.352946,
  qt: 946.352946,
};

/** kg in one of each; the avoirdupois pound is 0.45359237 kg exactly. */
export const MASSES: Record<string, number> = { kg: 1, g: 0.001, oz: 0.45359237 / 16, lb: 0.45359237 };

/** The fractions that have a letter of their own. */
export const FRACTIONS: Record<string, string> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
