// What a sentence offers to write at a key is accepted at that key.
import { describe, expect, it } from "vitest";
import { LIMITS } from "../../packages/casting-core/src/job/limits.js";
import { jobSchema } from "../../packages/casting-core/src/job/schema.js";

type Value = string | Value[] | { [key: string]: Value };
type Path = (string | number)[];

const PIECE = { thickness: "", density: "", bore: "", share: "", stock: "" };
const IN_CONTAINER = { height: "", headroom: "" };
const INSTRUMENT = { resolution: "", "zero-error": "", "size-error": "" };
const CURVE = { radius: "", "focal-ratio": "", sagitta: "" };

/** Jobs in which every figure of the schema stands once or oftener: each one is left empty. */
const JOBS: Value[] = [
  {
    blank: { diameter: "", ...CURVE, "sagitta-over": "", target: CURVE, thickness: "", bevel: "" },
    tool: { diameter: "", rim: "" },
    pieces: [
      { shape: "square", across: "", ...PIECE },
      { shape: "rectangle", length: "", width: "", ...PIECE },
      { shape: "round", diameter: "", ...PIECE },
      {
        shape: "polygon",
        points: [
          ["", ""],
          ["", ""],
          ["", ""],
        ],
        ...PIECE,
      },
    ],
    layout: { gap: "", seed: "", count: "", hand: "", "keep-clear": [{ x: "", y: "", diameter: "" }] },
    grooves: { cutter: "", depth: "", clearance: "", feed: "" },
    plaster: { kind: "custom", water: "", density: "", fill: "", cover: "", film: "", spare: "" },
    dam: { sheet: "", overlap: "" },
    socket: { diameter: "", bore: "", length: "" },
    container: { shape: "marks", marks: [{ height: "", volume: "" }], ...IN_CONTAINER },
    setup: {
      offset: "",
      stroke: "",
      turntable: [""],
      "tool-turns": "",
      weights: [""],
      grain: "",
      grades: [{ grain: "", depth: "" }],
      rate: { minutes: "", change: "", error: "" },
    },
    print: { overlap: "", measured: { x: "", y: "" }, guides: { sectors: "", rings: "" } },
  },
  {
    blank: {
      readings: {
        instrument: { bar: "", ball: "", ...INSTRUMENT },
        zones: [{ at: "", angle: "", along: "", reading: "" }],
      },
    },
    container: { shape: "tapered", bottom: "", top: "", ...IN_CONTAINER },
  },
  {
    blank: { readings: { instrument: { ring: "", wall: "", legs: "" } } },
    container: { shape: "box", length: "", width: "", ...IN_CONTAINER },
  },
  { container: { shape: "round", diameter: "", ...IN_CONTAINER } },
  { container: { shape: "stacked", sections: [{ bottom: "", top: "", height: "" }], headroom: "" } },
];

/** The paths of what is left empty. */
function emptyIn(value: Value, path: Path = []): Path[] {
  if (value === "") return [path];
  if (typeof value === "string") return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    emptyIn(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

/** `job` with `text` at `path`. */
function withText(job: Value, [key, ...rest]: Path, text: string): Value {
  if (key === undefined) return text;
  if (Array.isArray(job)) return job.map((item, index) => (index === key ? withText(item, rest, text) : item));
  const entries = Object.entries(job).map(([name, item]) => [name, name === key ? withText(item, rest, text) : item]);
  return Object.fromEntries(entries);
}

/** What a sentence offers: `such as 3 mm`, `write 10% or 0.1`, `write auto, or 32 mm`, `from 1 to 36`. */
function offered(sentence: string): string[] {
  const [, remedy = ""] = /(?:; |or )write (?!its )(.*)$/.exec(sentence) ?? [];
  const [, least, most] = /from (\d+)(?: to (\d+))?$/.exec(remedy) ?? [];
  const plain = remedy.replace(/(?:it in plain digits, |a number without a unit, |a \w+ )?such as |for example /g, "");
  return least !== undefined
    ? [least, ...(most ? [most] : [])]
    : plain.split(/, or | or |, /).filter((word) => word !== "");
}

describe("an example", () => {
  it.each(["mm", "in"] as const)("is accepted where it is offered, for every figure of a job in %s", (units) => {
    const schema = jobSchema(units);
    const toldAt = (job: Value, path: Path, text: string): string[] => {
      const issues = schema.safeParse(withText(job, path, text)).error?.issues ?? [];
      return issues.filter((issue) => issue.path.join(".") === path.join(".")).map(({ message }) => message);
    };
    const seen = new Set<string>();
    const lone: string[] = [];
    for (const job of JOBS)
      for (const path of emptyIn(job)) {
        const key = path.filter((part) => typeof part === "string").join(".");
        for (const wrong of ["x", "2e3 mm", "30%", "f/5", "3 stone", "1".repeat(33)]) {
          for (const sentence of toldAt(job, path, wrong)) {
            for (const text of offered(sentence)) {
              seen.add(key);
              const told = toldAt(job, path, text);
              if (told.length > 0) lone.push(`${key}: ${sentence} -> ${told}`);
            }
          }
        }
        if (!seen.has(key)) lone.push(`${key}: nothing is offered`);
      }
    expect(lone).toEqual([]);
    // A section's height is told apart from a container's.
    const limited = Object.keys(LIMITS).filter((key) => key !== "container.section");
    expect(limited.filter((key) => ![...seen].some((other) => other.startsWith(key)))).toEqual([]);
  });
});
