import { CastingError } from "../errors.js";
import { shown } from "./parse.js";

/** The parser of a figure that may stand below 0, and keeps its minus in what it is told. */
export function signed(parse: (text: string) => number): (text: string) => number {
  return (text) => {
    const written = text.trim();
    if (!written.startsWith("-")) return parse(text);
    const size = written.slice(1);
    try {
      return -parse(size);
    } catch (error) {
      if (!(error instanceof CastingError)) throw error;
      const told = error.faults[0]!.text.replace(shown(size), () => shown(written));
      const text = told.replace(/; [^;]*$/, (remedy) => remedy.replace(/(?<=^; write |")(?=[\d.])/g, "-"));
      throw new CastingError("invalid", [{ path: [], text }]);
    }
  };
}
