import {
  CastingError,
  changeJob,
  countText,
  jobSheetHtml,
  lengthText,
  makePlan,
  type Plan,
  readJob,
  SHEETS,
  type Sheet,
} from "casting-core";
import { readJobText } from "../files/read.js";
import { writeNew } from "../files/write-one.js";
import { faultText, inJob } from "../report/faults.js";
import { planRows, table } from "../report/figures.js";
import { usage } from "../usage.js";
import type { View, Viewed } from "./server.js";

/** The job as it stands in its file, with another seed and gap where they were asked for, and its plan. */
export class JobView implements Viewed {
  onShown: () => void = () => {};
  private text = "";
  /** What was asked for besides; a gap that was left alone stays as the file has it. */
  private other: { seed: string; gap: string | undefined } | undefined;
  private plan: Plan | undefined;
  private fault = "";
  /** Whether the file could not be read or worked out when it was last looked at. */
  private lost = false;
  private shown: { seed: string; gap: string } = { seed: "", gap: "" };

  constructor(
    private readonly file: string,
    private readonly draw: (sheet: Sheet) => string,
  ) {
    this.text = readJobText(file).text;
    this.work();
  }

  /** Reads the file again; whether it has changed. */
  reread(): boolean {
    try {
      const { text } = readJobText(this.file);
      if (text === this.text && !this.lost) return false;
      if (text !== this.text) this.other = undefined;
      this.text = text;
      this.work();
      this.lost = false;
    } catch (error) {
      this.lost = true;
      this.fault = error instanceof Error ? error.message : "the job cannot be read";
    }
    return true;
  }

  view(): View {
    const { plan } = this;
    if (this.fault !== "" || !plan) return { holds: false, text: this.fault, ...this.shown, sheets: this.sheets() };
    return { holds: true, text: countText(plan.layout.quality.count, "piece"), ...this.shown, sheets: this.sheets() };
  }

  sheet(name: string): { type: string; text: string } | undefined {
    const { plan } = this;
    if (!plan) return undefined;
    if (name === "job-sheet.html") return { type: "text/html; charset=utf-8", text: jobSheetHtml(plan, this.draw) };
    if (name === "figures.txt") return { type: "text/plain; charset=utf-8", text: table(planRows(plan)) };
    const draw = Object.hasOwn(SHEETS, name.replace(/\.svg$/, ""))
      ? SHEETS[name.replace(/\.svg$/, "") as keyof typeof SHEETS]
      : undefined;
    const sheet = draw?.(plan);
    return sheet && { type: "image/svg+xml", text: this.draw(sheet) };
  }

  show(seed: string, gap: string): void {
    this.other = { seed, gap: this.meant(gap) };
    this.work();
    this.onShown();
  }

  save(seed: string, gap: string): void {
    // What the maker has just saved in an editor may not have been read yet.
    if (readJobText(this.file).text !== this.text) {
      this.reread();
      this.onShown();
      throw usage("the job was changed in its file, and nothing is written; look at it as it is now and write again");
    }
    const text = changed(this.text, seed, this.meant(gap));
    readJob(text);
    writeNew(this.file, text, true);
    this.reread();
    this.onShown();
  }

  /** The gap behind the one that is shown, which is rounded: as it was asked for, or none where the file's own is left alone. */
  private meant(gap: string): string | undefined {
    return gap === this.shown.gap ? this.other?.gap : gap;
  }

  private sheets(): string[] {
    const names = Object.entries(SHEETS).flatMap(([name, draw]) =>
      this.plan && draw(this.plan) ? [`${name}.svg`] : [],
    );
    return ["job-sheet.html", ...names, "figures.txt"];
  }

  private work(): void {
    let text = this.text;
    try {
      if (this.other) text = changed(text, this.other.seed, this.other.gap);
      const job = readJob(text);
      this.shown = { seed: String(job.layout.seed), gap: lengthText(job.layout.gap, job.units) };
      this.plan = makePlan(job);
      this.fault = "";
    } catch (error) {
      if (!(error instanceof CastingError)) throw error;
      this.fault = faultText(inJob(error, text, this.file)).trimEnd();
      if (this.other) this.shown = { seed: this.other.seed, gap: this.other.gap ?? this.shown.gap };
    }
  }
}

function changed(text: string, seed: string, gap: string | undefined): string {
  const seeded = changeJob(text, "layout", "seed", seed);
  return gap === undefined ? seeded : changeJob(seeded, "layout", "gap", gap);
}
