import type { Group, Sheet } from "../sheet.js";

/** A picture of the job sheet: no printed sheet, so without facts and block. */
export function picture(
  name: string,
  { width, height }: { width: number; height: number },
  caption: string,
  groups: Group[],
): Sheet {
  return { name, width, height, caption, facts: [], bodyHeight: height, groups };
}
