// Figures that are usual by themselves but not beside each other are noted, and nothing that a maker would write.
import { describe, expect, it } from "vitest";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";

const PIECES = "pieces: {item: iso-4032-m10}\n";
// That a reading stands alone is told whatever it reads.
const said = (text: string) =>
  jobNotes(readJob(text + PIECES)).flatMap(({ code, text }) => (code === "one-reading" ? [] : [text]));
const measured = (diameter: string, instrument: string, zones: string) =>
  `blank: {diameter: ${diameter}, readings: {instrument: {${instrument}}, zones: [${zones}]}}\n`;
const weighed = (tool: string, weights: string) =>
  `blank: {diameter: 400 mm, radius: 3000 mm}\ntool: {diameter: ${tool}}\nsetup: {weights: [${weights}]}\n`;
const mixed = (bottom: string, top: string) =>
  `blank: {diameter: 300 mm, radius: 2400 mm}\ncontainer: {shape: tapered, bottom: ${bottom}, top: ${top}, height: 240 mm}\n`;

describe("what a maker would write", () => {
  it.each([
    measured("400 mm", "ring: 125 mm, ball: 6.35 mm", "{at: 0 mm, reading: 0.64 mm}, {at: 60 mm, reading: 0.65 mm}"),
    measured("150 mm", "ring: 50 mm, ball: 5 mm", "{at: 0 mm, reading: 0.26 mm}, {at: 45 mm, reading: 0.258 mm}"),
    measured("900 mm", "legs: 250 mm, ball: 10 mm", "{at: 0 mm, reading: 1.4 mm}, {at: 300 mm, reading: 1.41 mm}"),
    measured(
      "16 in",
      "bar: 6 in, ball: 0.25 in",
      "{at: 0 in, along: 0, reading: 0.047 in}, {at: 5 in, along: 90, reading: 0.046 in}",
    ),
    measured("200 mm", "ring: 80 mm", "{at: 0 mm, reading: 0.127 mm}"),
    // Without a blank, as casting curve reads it: f/7 on a blank of 300 mm.
    measured("100 mm", "ring: 100 mm", "{at: 0 mm, reading: 0.3 mm}"),
    weighed("300 mm", "0 kg, 4.5 kg, 9 kg"),
    weighed("15 in, rim: 3 mm", "0 lb, 10 lb, 20 lb"),
    weighed("120 mm, rim: 1 mm", "0 kg, 90 g"),
    // The usual weights, far too much for so small a tool, but nobody wrote them.
    "blank: {diameter: 120 mm, radius: 900 mm}\ntool: {diameter: 80 mm, rim: 1 mm}\nsetup: {stroke: 10 mm}\n",
    weighed("120 mm", "0.2 kg, 0.5 kg, 1 kg, 2 kg"),
    mixed("180 mm", "230 mm"),
    mixed("230 mm", "230 mm"),
    mixed("100 mm", "250 mm"),
  ])("%s", (job) => {
    expect(said(job)).toEqual([]);
  });
});

describe("a slip is told with the figures it shows in", () => {
  it.each([
    [
      measured("400 mm", "ring: 125 mm", "{at: 0 mm, reading: 6.4 mm}, {at: 60 mm, reading: 0.65 mm}"),
      "A reading of 6.4 mm over 125 mm makes a focal ratio of 0.39 on a blank of 400 mm: check these figures and their units.",
    ],
    [
      measured("400 mm", "ring: 125 mm", "{at: 0 mm, reading: 0.0252 mm}, {at: 60 mm, reading: 0.0255 mm}"),
      "A reading of 0.025 mm, one of 2 such, over 125 mm makes a focal ratio of 97 on a blank of 400 mm: check these figures and their units.",
    ],
    [
      measured("100 mm", "ring: 100 mm", "{at: 0 mm, reading: 0.03 mm}"),
      "A reading of 0.03 mm over 100 mm makes a radius of 41667 mm: check both figures and their units.",
    ],
    [
      measured("400 mm", "legs: 40 mm", "{at: 0 mm, reading: 0.64 mm}"),
      "A reading of 0.64 mm over 40 mm makes a focal ratio of 0.52 on a blank of 400 mm: check these figures and their units.",
    ],
    [
      measured("400 mm", "ring: 125 mm", "{at: 0 mm, reading: 0.64 mm}, {at: 2.4 mm, reading: 0.65 mm}"),
      "A reading at 2.4 mm is as good as one at the centre for a spherometer of 125 mm: check both figures and their units.",
    ],
    [
      weighed("300 mm", "0 kg, 0.35 kg"),
      "A weight of 0.35 kg presses a tool of 300 mm with 0.049 kPa: check both figures and their units.",
    ],
    [
      weighed("220 mm", "0 kg, 25 kg"),
      "A weight of 25 kg presses a tool of 220 mm with 6.4 kPa: check both figures and their units.",
    ],
    [
      measured("250 mm", "legs: 125 mm", "{at: 0 mm, reading: 0.6 mm}, {at: 55 mm, reading: 0.6 mm}"),
      "A spherometer of 125 mm reaches 127.17 mm from the centre, off the face of the blank, which ends at 125 mm: check where it stood, these figures and their units.",
    ],
    [
      measured("250 mm, bevel: 8 mm", "ring: 240 mm", "{at: 0 mm, reading: 3.6 mm}"),
      "A spherometer of 240 mm reaches 120 mm from the centre, off the face of the blank, which ends at 117 mm: check where it stood, these figures and their units.",
    ],
    [
      measured("250 mm", "bar: 245 mm", "{at: 30 mm, along: 90, reading: 3.9 mm}"),
      "A spherometer of 245 mm reaches 126.12 mm from the centre, off the face of the blank, which ends at 125 mm: check where it stood, these figures and their units.",
    ],
    [
      "blank: {diameter: 250 mm, radius: 2000 mm}\nlayout: {keep-clear: [{x: 400 mm, y: 0 mm, diameter: 20 mm}]}\n",
      "The circle of 20 mm to be kept clear at (400 mm, 0 mm) lies off the tool of 187.5 mm and keeps nothing clear: check its place.",
    ],
    [
      mixed("180 mm", "630 mm"),
      "A container 180 mm wide at the bottom and 630 mm at the top is unusual: check both figures and their units.",
    ],
    [
      mixed("480 mm", "230 mm"),
      "A container 480 mm wide at the bottom and 230 mm at the top is unusual: check both figures and their units.",
    ],
  ])("%s", (job, sentence) => {
    expect(said(job).filter((text) => !text.includes("a sphere reads the same"))).toEqual([sentence]);
  });
});

describe("a sagitta beside a bevel", () => {
  const of = (blank: string) =>
    jobNotes(readJob(`blank: {diameter: 400 mm, ${blank}}\n${PIECES}`)).filter(
      ({ code }) => code === "sagitta-over-bevel",
    );

  it("tells by how much the radius is off if it was measured inside the bevel", () => {
    // 6.413 mm over 396 mm taken for 400 mm puts the radius 2 % off.
    expect(of("sagitta: 6.413 mm, bevel: 2 mm")[0]?.text).toBe(
      "The sagitta is taken over the whole 400 mm, but a straightedge across the blank rests inside its bevel: if it was measured under one, write sagitta-over: 396 mm, or the radius comes out 2.0 % too long.",
    );
  });

  it("is told of nothing where the chord is given, no bevel is cut, or the glass bulges", () => {
    expect(of("sagitta: 6.413 mm, bevel: 2 mm, sagitta-over: 396 mm")).toEqual([]);
    expect(of("sagitta: 6.413 mm")).toEqual([]);
    expect(of("radius: 3060 mm, bevel: 2 mm")).toEqual([]);
    expect(of("sagitta: 6.413 mm, bevel: 2 mm, curve: convex")).toEqual([]);
  });

  it("is doubted where its chord is wider than the face", () => {
    const chord = (over: number) =>
      jobNotes(
        readJob(`blank: {diameter: 400 mm, sagitta: 6.4 mm, sagitta-over: ${over} mm, bevel: 2 mm}\n${PIECES}`),
      ).map(({ text }) => text);
    expect(chord(396)).toEqual([]);
    expect(chord(398)).toEqual([
      "A chord of 398 mm reaches off the face of the blank, which is 396 mm across inside its bevel: check what the sagitta was measured over, both figures and their units.",
    ]);
  });
});

describe("a rate that its error swallows", () => {
  it.each([
    ["mm", "0.004", "a change of 0.004 mm is no more than twice its error of 0.003 mm"],
    ["in", "0.0002", "a change of 0.0002 in is no more than twice its error of 0.0001 in"],
  ])("in %s is told with both figures, none of them as 0", (units, change, told) => {
    const job = `units: ${units}\nblank: {diameter: 300 mm, radius: 2400 mm}\nsetup: {rate: {minutes: 20, change: ${change}}}\n`;
    expect(() => readJob(job + PIECES)).toThrow(told);
  });
});
