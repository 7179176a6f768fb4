// Slips of YAML that many make are told where they are made, with what to write instead.
import { describe, expect, it } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { faults } from "../support/faults.js";

const BLANK = "blank: {diameter: 250 mm, focal-ratio: 5}\n";
const PIECES = "pieces: {item: iso-4032-m10}\n";

const SPACE = 'no space stands after the colon of "focal-ratio:5"; write "focal-ratio: 5"';
const COMMA = "write one, or quotes round the whole value";
const COLUMN =
  "this line begins in another column than the lines before it that it belongs with; begin them all in the same one";
const TWO_COLONS =
  "has a colon in it; put it in quotes if it is one text, or begin a new line, indented, where it is a key and its value";

describe("a slip of YAML", () => {
  it.each([
    ["at the end of a block", `blank:\n  diameter: 250 mm\n  focal-ratio:5\n${PIECES}`, `3:3 : ${SPACE}`],
    ["at its beginning", `blank:\n  focal-ratio:5\n  diameter: 250 mm\n${PIECES}`, `2:3 : ${SPACE}`],
    ["as all of a block", `blank:\n  focal-ratio:5\n${PIECES}`, `1:1 blank: ${SPACE}`],
    ["in braces", `blank: {diameter: 250 mm, focal-ratio:5}\n${PIECES}`, `1:27 blank.focal-ratio: ${SPACE}`],
    ["with other line ends", `blank:\r\n  diameter: 250 mm\r\n  focal-ratio:5\r\n${PIECES}`, `3:3 : ${SPACE}`],
    [
      "before braces",
      `blank:{diameter: 250 mm}\n${PIECES}`,
      '1:1 blank: no space stands after the colon of "blank:{diameter"; write "blank: {diameter"',
    ],
    [
      "as all of a piece",
      `${BLANK}pieces: item:iso-4032-m10\n`,
      '2:1 pieces: no space stands after the colon of "item:iso-4032-m10"; write "item: iso-4032-m10"',
    ],
  ])("has no space after a colon %s", (_, text, told) => {
    expect(faults(text)).toEqual([told]);
  });

  it("has a colon without a space where that is allowed", () => {
    expect(readJob(`title: f/5:coarse\n${BLANK}${PIECES}`).title).toBe("f/5:coarse");
  });

  it.each([
    ["between keys", "blank: {diameter: 250 mm focal-ratio: 5}\n", '1:26 : a comma is missing before "focal-ratio"'],
    [
      "at a line's end",
      "blank: {diameter: 250 mm\n  focal-ratio: 5}\n",
      '2:3 : a comma is missing before "focal-ratio"',
    ],
    ["after braces", "blank: {target: {radius: 5} bevel: 3}\n", '1:29 : a comma is missing before "bevel"'],
    ["between braces", `${BLANK}pieces: [{item: a} {item: b}]\n`, '2:21 : a comma is missing before "item"'],
    ["in JSON", '{"blank": {"diameter": "9 in" "radius": 5}}\n', '1:31 : a comma is missing before "radius"'],
    ["in JSON's lines", '{"blank": {"diameter": "9 in"\n  "radius": 5}}\n', '2:3 : a comma is missing before "radius"'],
  ])("has no comma %s", (_, text, told) => {
    expect(faults(text)).toEqual([`${told}; ${COMMA}`]);
  });

  it.each([
    ["further", "blank:\n diameter: 250 mm\n  focal-ratio: 5\n", "3:3", /^this line is indented further than line 2, /],
    [
      "further than a piece",
      "pieces:\n - item: a\n     share: 3\n",
      "3:6",
      /^this line is indented further than line 2, /,
    ],
    ["less", "blank:\n   diameter: 250 mm\n  focal-ratio: 5\n", "3:3", COLUMN],
    ["less than a piece", "pieces:\n  - item: a\n   share: 3\n", "3:4", COLUMN],
    ["less, as a piece", "pieces:\n  - item: a\n - item: b\n", "3:2", COLUMN],
    ["further, as a piece", "pieces:\n - item: a\n   - item: b\n", "3:4", COLUMN],
  ])("is indented %s", (_, text, place, words) => {
    const [told, ...more] = faults(text);
    expect(more).toEqual([]);
    expect(told).toMatch(new RegExp(`^${place} : `));
    expect(told!.replace(/^\S+ : /, "")).toMatch(words);
  });

  it.each([
    ["title: tool: coarse\n", '1:8 : "tool: coarse"'],
    ["pieces: item: iso-4032-m10\n", '1:9 : "item: iso-4032-m10"'],
    ["blank: {material: glass: old, bevel: 3}\n", '1:19 : "glass: old"'],
  ])("has two colons: %j", (text, told) => {
    expect(faults(text)).toEqual([`${told} ${TWO_COLONS}`]);
  });

  it.each([
    [
      '{"blank":{"diameter":250,\n',
      "1:10 : the text ends before the { that opens here is closed; write } where it ends, or copy the file whole",
    ],
    [
      "setup: {weights: [1, 2",
      "1:18 : the text ends before the [ that opens here is closed; write ] where it ends, or copy the file whole",
    ],
    [`blank: {diameter: 250\n${PIECES}`, "1:8 : nothing closes the { that opens here; write } where it ends"],
    ["setup: {weights: [1, 2}\n", "1:18 : nothing closes the [ that opens here; write ] where it ends"],
    ["setup: {weights: [1, 2]]\n", "1:8 : nothing closes the { that opens here; write } where it ends"],
    [`setup: {stroke: 1}}\n${BLANK}`, "1:19 : this } closes nothing; remove it"],
    ["blank: {diameter: 3,, bevel: 4}\n", "1:21 : nothing stands before this comma; remove one"],
  ])("leaves brackets askew: %j", (text, told) => {
    expect(faults(text)).toEqual([told]);
  });

  it.each([
    [
      `title Tool for a mirror\n${BLANK}`,
      '1:1 : this line has no colon; write key: value, such as "title: Tool for a mirror"',
    ],
    [`title = Tool\n${BLANK}`, '1:1 : this line has no colon; write key: value, such as "title: Tool"'],
    [
      "title: 'it's'\n",
      "1:12 : text stands here after the quote that ends the value; put all of it in one pair of quotes",
    ],
    ["title: @work\n", '1:8 : a value cannot begin with "@"; put it in quotes'],
  ])("is of another kind: %j", (text, told) => {
    expect(faults(text)).toEqual([told]);
  });

  it("is told in general where nothing says how it came about", () => {
    expect(faults("title: [a] b\n")).toEqual([
      expect.stringMatching(/^1:12 : the text is not YAML \(.*\); check quotes/),
    ]);
  });

  it("is told once in the lines that follow from it", () => {
    expect(faults(`${PIECES}blank:\n\tdiameter: 250 mm\n  radius: 3000\n`)).toEqual([
      "3:1 : a tab indents this line; use spaces",
    ]);
  });

  it.each([
    ["quotes", `title: ${'"'.repeat(60_000)}`, "1:10 : text stands here after the quote"],
    ["aliases", "*a ".repeat(20_000), "1:4 : the text is not YAML (Unexpected alias"],
    ["closing brackets", "]".repeat(60_000), "1:1 : the text is not YAML (Unexpected flow-seq-end"],
    ["commas", `pieces: [a${",".repeat(60_000)}]`, "1:12 : nothing stands before this comma; remove one"],
    ["opening brackets", "[".repeat(60_000), "1:251 : this is nested deeper than any job"],
    ["dashes", "- ".repeat(30_000), "1:500 : this is nested deeper than any job"],
    ["values in a list", `title: a\npieces: [${"x, ".repeat(20_000)}]`, "2:9 : more than 1,000 values stand within"],
  ])("of %s without end is told at once, and read no further", (_, text, told) => {
    expect(faults(text)).toEqual([expect.stringContaining(told)]);
  });

  it("is not found in many texts that look like values in a row", () => {
    const text = `title: |\n${'  "a" "b" *c\n'.repeat(50)}`;
    expect(faults(text + BLANK + PIECES)[0]).not.toMatch(/YAML|quote/);
  });
});
