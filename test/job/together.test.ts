// Faults of single values and faults of figures beside each other are told in one go.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";

type Tree = { [key: string]: unknown };
/** What goes wrong: a place in the job and what stands there. */
type Break = readonly [path: string, value: unknown];

const SOUND = {
  units: "mm",
  blank: { diameter: 400, radius: 3060, target: { radius: 3200 } },
  tool: { diameter: 300, rim: 3 },
  pieces: [{ item: "iso-4032-m12" }, { shape: "square", across: 25, thickness: 6, density: 2.35 }],
  plaster: { kind: "type-3" },
  socket: { diameter: 28, bore: 21, length: 48 },
  container: { shape: "round", diameter: 230, height: 240, headroom: 30 },
  setup: { grain: "F24", grades: [{ grain: "F80" }] },
};

/** Faults of one value: each must be told, and nothing that only follows from it. */
const VALUES: Break[] = [
  ["title", "a\u202eb"],
  ["units", "cm"],
  ["blank.diameter", "wide"],
  ["blank.diametr", 400],
  ["blank.radius", "3,060 m,"],
  ["blank.thickness", -3],
  ["blank", 5],
  ["tool.diameter", "3 kg"],
  ["tool.rim", "x"],
  ["tool", "big"],
  ["tol", { diameter: 100 }],
  ["socet", { diameter: 10, length: 40 }],
  ["pieces.1.across", "25 kg"],
  ["pieces.0.item", "iso-4032-m13"],
  ["pieces", []],
  ["plaster.kind", "type-33"],
  ["plaster.watr", 0.3],
  ["socket.bore", "?"],
  ["socket.length", true],
  ["container.shape", "rond"],
  ["container.height", "tall"],
  ["layout.seed", -1],
  ["layout.keep-clear", [{ x: 0, y: 0, diameter: "x" }]],
  ["setup.grain", "F25"],
  ["setup.grades", [{ grain: "G80" }]],
  ["print.paper", "A44"],
];

/** Faults of figures beside each other. */
const RULES: Break[] = [
  ["blank.sagitta", 6],
  ["blank.radius", 150],
  ["blank.curve", "flat"],
  ["blank.sagitta-over", 380],
  ["blank.bevel", 200],
  ["tool.diameter", 500],
  ["tool.rim", 200],
  ["pieces.1.across", 320],
  ["pieces", [{ item: "iso-4032-m12", share: "70%" }]],
  ["layout.keep-clear", [{ x: 0, y: 0, diameter: 350 }]],
  ["plaster.density", 2.3],
  ["plaster.kind", "custom"],
  ["socket.bore", 30],
  ["socket.diameter", 310],
  ["container.headroom", 260],
  ["setup.grades", [{ grain: "F16" }]],
];

function broken(breaks: readonly Break[]): Tree {
  const job: Tree = structuredClone(SOUND);
  for (const [path, value] of breaks) {
    const keys = path.split(".");
    let at: Tree = job;
    for (const key of keys.slice(0, -1)) {
      if (typeof at[key] !== "object") at[key] = {};
      at = at[key] as Tree;
    }
    at[keys.at(-1)!] = value;
  }
  return job;
}

/** The faults of a job, each as its key and sentence. */
function faults(job: Tree): string[] {
  try {
    readJob(JSON.stringify(job));
  } catch (error) {
    if (!(error instanceof CastingError)) throw error;
    return error.faults.map(({ path, text }) => `${path.join(".")}: ${text}`);
  }
  return [];
}

const part = ([path]: Break) => path.split(".")[0];

describe("a job with a fault of one value and one of figures beside each other", () => {
  it("is sound as it stands, and each fault is one by itself", () => {
    expect(faults(SOUND)).toEqual([]);
    for (const each of [...VALUES, ...RULES]) expect(faults(broken([each])), JSON.stringify(each)).not.toEqual([]);
  });

  // Of these parts no rule looks at another.
  it.each(
    VALUES.filter((value) => !["units", "blank", "tool", "tol"].includes(part(value)!)).flatMap((value) =>
      RULES.filter((rule) => part(rule) !== part(value) && !(part(value) === "socet" && part(rule) === "socket")).map(
        (rule) => [value, rule] as const,
      ),
    ),
  )("tells both: %j and %j", (value, rule) => {
    const both = faults(broken([rule, value]));
    expect(both).toEqual(expect.arrayContaining(faults(broken([value]))));
    expect(both).toEqual(expect.arrayContaining(faults(broken([rule]))));
  });

  it("tells of what hangs on no blank beside a blank that cannot be read", () => {
    const told = faults(
      broken([
        ["blank.diameter", "wide"],
        ["tool.rim", 200],
        ["socket.diameter", 310],
      ]),
    ).join("\n");
    expect(told).toMatch(/^blank.diameter: /m);
    expect(told).toMatch(/^tool.rim: a rim of 200 mm/m);
    expect(told).toMatch(/^socket.diameter: a socket of 310 mm leaves no plaster round it in a tool of /m);
    expect(faults({ ...broken([["blank.diameter", "wide"]]), tool: { rim: 200 } })).toHaveLength(1);
  });

  it.each([
    [
      ["blank.thickness", -3],
      ["blank.sagitta", 6],
    ],
    [
      ["blank.thicknes", 45],
      ["blank.radius", 150],
    ],
    [
      ["blank.bevel", "x"],
      ["tool.diameter", 500],
    ],
    [
      ["blank.target.radius", "x"],
      ["blank.sagitta", 6],
    ],
    [
      ["tool.rimm", 3],
      ["tool.diameter", 500],
    ],
    [
      ["pieces.1.density", "?"],
      ["pieces.1.across", 320],
    ],
    [
      ["pieces.0.density", 7],
      ["pieces.1.share", "130%"],
    ],
    [
      ["container.lid", 5],
      ["container.headroom", 260],
    ],
    [
      ["setup.stroke", "wide"],
      ["setup.grades", [{ grain: "F16" }]],
    ],
  ] as [Break, Break][])("tells both of one part where the rule's own keys were read: %j and %j", (value, rule) => {
    expect(faults(broken([rule, value]))).toEqual(
      expect.arrayContaining([...faults(broken([value])), ...faults(broken([rule]))]),
    );
  });

  it.each([
    // Any key may be the curve's, and the target's.
    [
      ["blank.roc", 3060],
      ["blank.radius", undefined],
    ],
    [
      ["blank.radius", "x"],
      ["blank.sagitta", 6],
    ],
    [
      ["tool.rimm", 3],
      ["tool.rim", undefined],
    ],
    [
      ["container.height", "x"],
      ["container.headroom", 260],
    ],
    [
      ["pieces.0.shar", "30%"],
      ["pieces.1.share", "70%"],
    ],
  ] as [Break, Break][])("tells one alone where a rule's key was not read: %j and %j", (value, rule) => {
    expect(faults(broken([rule, value]))).toHaveLength(1);
  });

  it.each([[["in"]], [{ in: 1 }], [true]])("takes units of %j for millimetres", (units) => {
    expect(faults({ ...SOUND, units })).toEqual([expect.stringMatching(/^units: /)]);
  });

  it("takes units that are not known for those meant", () => {
    const sized = (units: string) => ({
      units,
      blank: { diameter: "200 mm", radius: "1600 mm", "focal-ratio": 4 },
      tool: { diameter: 9 },
      pieces: [
        { shape: "hexagon", across: "12 mm", thickness: "5 mm", density: 7.85, share: "70%" },
        { item: "iso-4032-m10", share: "60%" },
      ],
      container: {
        shape: "marks",
        height: "100 mm",
        headroom: "100 mm",
        marks: [
          { height: 3, volume: 1 },
          { height: 2, volume: 2 },
        ],
      },
      plaster: { water: 0.1 },
    });
    const told = faults(sized("inch"));
    expect(told).toEqual([expect.stringMatching(/^units: "inch" is not known .* "in"/), ...faults(sized("in"))]);
    expect(told.join()).toMatch("tool.diameter: a tool of 9 in is wider");
    expect(told).toHaveLength(7);
  });

  it("tells nothing that is gone once the single values are mended", () => {
    fc.assert(
      fc.property(fc.subarray(RULES), fc.subarray(VALUES, { minLength: 1 }), (rules, values) => {
        // Last written stands: a value's fault must not lie on what a rule's break wrote, nor take it away.
        const over = (a: string, b: string) => a === b || a.startsWith(`${b}.`) || b.startsWith(`${a}.`);
        const kept = values.filter(([path]) => !rules.some(([other]) => over(path, other)));
        const mended = faults(broken(rules));
        const told = faults(broken([...kept, ...rules]));
        const alone = faults(broken(kept));
        for (const each of told) expect([...mended, ...alone]).toContain(each);
      }),
      { numRuns: 100 },
    );
  });
});
