import { expect, it } from "vitest";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import { exampleJob } from "../support/jobs.js";

const said = (title: string) => jobNotes(exampleJob({ title })).filter(({ code }) => code === "title-letters");

it("a title whose letters can be printed, or said by plainer ones, is not noted", () => {
  for (const title of ["Größe «ß» é — 8 ½ in", "Ø 8″, 6′, 1⅛″, −5 μm, ⌀ 3"]) expect(said(title)).toEqual([]);
});

it("a title with other letters is noted once, each letter counted once", () => {
  const [note, ...more] = said("Ø 8″ — ½ тест 日本語 «ß» é");
  expect(more).toEqual([]);
  expect(note).toEqual({
    code: "title-letters",
    level: "info",
    text: 'templates.pdf has a question mark for "т" and 5 other letters of the title, as it can print Latin letters only; the other files show them.',
  });
  expect(said("日")[0]!.text).toContain('for "日" of the title');
});
