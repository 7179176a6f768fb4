import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planJson } from "../../packages/casting-core/src/plan/json.js";

describe("the JSON text of a plan", () => {
  it("has lists of numbers and small records on one line, all else indented", () => {
    expect(
      planJson({
        title: 'a "title"\nof two lines',
        empty: [],
        none: {},
        point: [1, -2.5],
        points: [
          [0, 0],
          [10, 0],
        ],
        flags: [true, null, "x"],
        record: { a: 1, b: "two", c: false },
        records: [{ a: 1 }, { a: 2 }],
        deep: { list: [1], record: { b: { c: 3 } } },
        left: undefined,
      }),
    ).toBe(`{
  "title": "a \\"title\\"\\nof two lines",
  "empty": [],
  "none": {},
  "point": [1, -2.5],
  "points": [[0, 0], [10, 0]],
  "flags": [true, null, "x"],
  "record": {"a": 1, "b": "two", "c": false},
  "records": [
    {"a": 1},
    {"a": 2}
  ],
  "deep": {
    "list": [1],
    "record": {
      "b": {"c": 3}
    }
  }
}
`);
  });

  it("breaks records longer than 120 letters with their indent, and never a list of numbers", () => {
    const broken = (length: number) => planJson({ a: { text: "x".repeat(length) } }).split("\n").length > 4;
    // Two spaces of indent are counted, the key before the record is not: {"text": "…"} takes 12 more.
    expect([broken(120 - 2 - 12), broken(120 - 2 - 11)]).toEqual([false, true]);
    const numbers = Array.from({ length: 100 }, (_, i) => i + 0.5);
    expect(planJson({ numbers }).split("\n")).toHaveLength(4);
    expect(planJson({ points: [numbers, numbers] }).split("\n")).toHaveLength(4);
    const words = Array.from({ length: 40 }, (_, i) => `word ${i}`);
    expect(planJson({ words }).split("\n")).toHaveLength(40 + 5);
    expect(planJson({ text: "x".repeat(500) }).split("\n")).toHaveLength(4);
  });

  it("writes nothing for a missing key, and null for a missing item", () => {
    expect(planJson({ a: undefined, b: [undefined, { c: [1, { d: 1 }] }] })).toBe(
      `{\n  "b": [\n    null,\n    {\n      "c": [\n        1,\n        {"d": 1}\n      ]\n    }\n  ]\n}\n`,
    );
  });

  it.each([
    [0.1 + 0.2, "0.3"],
    [-0, "0"],
    [-1e-20, "0"],
    [1e-7, "0.0000001"],
    [-1.25e-7, "-0.000000125"],
    [123456789.1234567, "123456789.123"],
    [1e21, "1000000000000000000000"],
    [-1.5e22, "-15000000000000000000000"],
    [1 / 3, "0.333333333333"],
  ])("writes %d as %s", (value, text) => {
    expect(planJson({ value })).toBe(`{"value": ${text}}\n`);
  });

  it.each([Number.NaN, Infinity, -Infinity])("refuses %d", (value) => {
    expect(() => planJson({ list: [1, value] })).toThrow("a plan holds finite numbers only");
  });

  it("reads back as what was written, numbers to twelve digits, on lines without trailing spaces", () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 });
    const tree = fc.letrec((again) => ({
      value: fc.oneof(
        { depthSize: "small" },
        number,
        fc.string(),
        fc.boolean(),
        fc.constant(null),
        again("list"),
        again("record"),
      ),
      list: fc.array(again("value"), { maxLength: 6 }),
      record: fc.dictionary(
        fc.string({ minLength: 1 }).filter((key) => key !== "__proto__"),
        again("value"),
        { maxKeys: 6 },
      ),
    }));
    fc.assert(
      fc.property(tree.record, (record) => {
        const text = planJson(record as object);
        const rounded = JSON.stringify(record, (_, value) =>
          typeof value !== "number" ? value : Math.abs(value) < 1e-6 ? 0 : Number(value.toPrecision(12)) || 0,
        );
        const read = JSON.stringify(JSON.parse(text), (_, value) =>
          typeof value === "number" && Math.abs(value) < 1e-6 ? 0 : value,
        );
        expect(read).toBe(rounded);
        expect(text).not.toMatch(/ $/m);
      }),
      { numRuns: 200 },
    );
  });
});
