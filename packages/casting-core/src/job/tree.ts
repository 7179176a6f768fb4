import { isAlias, isMap, isScalar, isSeq, type Node, type Scalar } from "yaml";
import { shown, withoutComma } from "../units/parse.js";

/** A job as written: scalars as their text, true and false as such. */
export type Raw = string | boolean | Raw[] | { [key: string]: Raw };

/** Keys and list indices from the root of the job. */
export type Path = readonly (string | number)[];

const DEEPEST = 8;
/** The sentence for what nests too deep. */
export const TOO_DEEP = "this is nested deeper than any job; check brackets and indentation";
/** Words that YAML reads as nothing, or as no finite number. */
const NOTHING = /^(?:|~|null|Null|NULL)$/;

/** A key whose colon has its value right behind it: YAML takes the two for one word. */
export const UNSPACED = /^([A-Za-z][\w-]*):(?=\S)/;

/** The sentence for such a `word`. */
export function spaceSentence(word: string, key: string): string {
  return `no space stands after the colon of ${shown(word)}; write ${shown(word.replace(`${key}:`, `${key}: `))}`;
}

/** What is gathered on the way through a document. */
interface Walk {
  text: string;
  /** Where each value, or the key before it, begins in the text. */
  places: Map<string, number>;
  fault(path: Path, offset: number, sentence: string): void;
}

/** A node of a document as it was written; what a job does not take is told to `fault` and left out. */
export function walk(node: unknown, path: Path, into: Walk): Raw {
  const { text, places, fault } = into;
  const offset = (node as Node | null)?.range?.[0] ?? places.get(keyOf(path)) ?? 0;
  if (!places.has(keyOf(path))) places.set(keyOf(path), offset);
  const refuse = (sentence: string, from = offset): Raw => {
    fault(path, from, sentence);
    return "";
  };
  // Nothing has no place of its own: its key's.
  const nothing = () => refuse("there is no value; write one, or remove the key", places.get(keyOf(path)));
  if (path.length > DEEPEST) return refuse(TOO_DEEP);
  const anchor = (node as { anchor?: string } | null)?.anchor;
  if (isAlias(node) || anchor !== undefined) {
    // A node begins after its anchor.
    const from = anchor === undefined ? offset : text.lastIndexOf(`&${anchor}`, offset);
    return refuse("anchors and aliases (& and *) are not read in a job; write the value out", from);
  }
  if ((node as Node | null)?.tag !== undefined) return refuse("tags (!) are not read in a job; write the plain value");
  if (isMap(node)) {
    const map: { [key: string]: Raw } = Object.create(null);
    for (const [index, { key, value }] of node.items.entries()) {
      const before = node.items[index - 1];
      const figure = value === null && partedFigure(before?.value, key);
      if (figure) {
        fault(
          [...path, textOf(before!.key as Scalar)],
          ((before!.key as Node).range ?? [offset])[0],
          commaSentence(figure),
        );
        continue;
      }
      const name = isScalar(key) ? textOf(key) : undefined;
      const start = (key as Node | null)?.range?.[0] ?? offset;
      if (name === undefined || (key as Node).tag !== undefined || (key as { anchor?: string }).anchor !== undefined) {
        fault(path, start, "a key here is not a plain word; write key: value");
        continue;
      }
      const unspaced = isScalar(key) && key.type === "PLAIN" ? UNSPACED.exec(name)?.[1] : undefined;
      if (unspaced !== undefined) {
        fault([...path, unspaced], start, spaceSentence(name, unspaced));
        continue;
      }
      const inner = [...path, name];
      if (Object.hasOwn(map, name)) {
        fault(inner, start, "the same key stands twice; keep one of them");
        continue;
      }
      places.set(keyOf(inner), start);
      map[name] = walk(value, inner, into);
    }
    return map;
  }
  if (isSeq(node)) {
    return node.items.map((item, index) => {
      const figure = partedFigure(item, node.items[index + 1]);
      // [30,45] are two numbers, [4,5 kg] is one mass.
      if (figure && /\p{L}|["'%]/u.test(figure)) fault([...path, index], offset, commaSentence(figure));
      return walk(item, [...path, index], into);
    });
  }
  if (isScalar(node)) {
    if (typeof node.value === "boolean") return node.value;
    if (node.type === "PLAIN" && NOTHING.test(textOf(node))) return nothing();
    return textOf(node);
  }
  return nothing();
}

/** A figure with a decimal comma that braces or brackets part into two, `4` and `5`: its text, or nothing. */
function partedFigure(before: unknown, after: unknown): string | undefined {
  if (!isScalar(before) || !isScalar(after) || before.type !== "PLAIN" || after.type !== "PLAIN") return undefined;
  if (!before.range || before.range[1] + 1 !== after.range?.[0]) return undefined;
  const [whole, rest] = [textOf(before), textOf(after)];
  return /^[-+]?\d+$/.test(whole) && /^\d+(?:\s*[\p{L}"'%]|$)/u.test(rest) ? `${whole},${rest}` : undefined;
}

function commaSentence(figure: string): string {
  return `${shown(figure)} has a comma in it; write ${withoutComma(figure)}, or with a space after the comma where two values are meant`;
}

/** A scalar as it was written: numbers keep their digits. */
function textOf(scalar: Scalar): string {
  return typeof scalar.value === "string" ? scalar.value : (scalar.source ?? String(scalar.value));
}

/** A path as one word. */
export function keyOf(path: Path): string {
  return path.map((part) => `${typeof part === "number" ? "#" : "."}${part}`).join("\u0000");
}

/** Whether `above` is `path` itself or holds it. */
export function isAbove(above: Path, path: Path): boolean {
  return above.every((part, index) => part === path[index]);
}
