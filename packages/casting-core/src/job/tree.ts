import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from "yaml";
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
  const offset = startOf(node, places.get(keyOf(path)) ?? 0);
  if (!places.has(keyOf(path))) places.set(keyOf(path), offset);
  const refuse = (sentence: string, from = offset): Raw => {
    fault(path, from, sentence);
    return "";
  };
  if (path.length > DEEPEST) return refuse(TOO_DEEP);
  const anchor = (node as { anchor?: string } | null)?.anchor;
  if (isAlias(node) || anchor !== undefined) {
    // A node begins after its anchor.
    const from = anchor === undefined ? offset : text.lastIndexOf(`&${anchor}`, offset);
    return refuse("anchors and aliases (& and *) are not read in a job; write the value out", from);
  }
  if ((node as Node | null)?.tag !== undefined) return refuse("tags (!) are not read in a job; write the plain value");
  if (isMap(node)) return walkMap(node, path, offset, into);
  if (isSeq(node)) return walkList(node, path, offset, into);
  if (isScalar(node)) {
    if (typeof node.value === "boolean") return node.value;
    if (node.type !== "PLAIN" || !NOTHING.test(textOf(node))) return textOf(node);
  }
  // Nothing has no place of its own: its key's.
  return refuse("there is no value; write one, or remove the key", places.get(keyOf(path)));
}

function walkMap({ items }: YAMLMap, path: Path, offset: number, into: Walk): Raw {
  const map: { [key: string]: Raw } = Object.create(null);
  for (const [index, pair] of items.entries()) {
    const fault = keyFault(pair, items[index - 1], map, path, offset);
    if (fault) {
      into.fault(...fault);
      continue;
    }
    const name = textOf(pair.key as Scalar);
    const inner = [...path, name];
    into.places.set(keyOf(inner), startOf(pair.key, offset));
    map[name] = walk(pair.value, inner, into);
  }
  return map;
}

/**
 * What keeps the key of a pair from being read into the `map` of those before it, told as `fault` takes it. The rest of a
 * figure that a comma has parted comes first: it stands where a key does, and is none.
 */
function keyFault(
  { key, value }: Pair,
  before: Pair | undefined,
  map: { [key: string]: Raw },
  path: Path,
  offset: number,
): Parameters<Walk["fault"]> | undefined {
  const figure = value === null && partedFigure(before?.value, key);
  if (figure) {
    return [[...path, textOf(before!.key as Scalar)], startOf(before!.key, offset), commaSentence(figure)];
  }
  const start = startOf(key, offset);
  if (!isScalar(key) || key.tag !== undefined || key.anchor !== undefined) {
    return [path, start, "a key here is not a plain word; write key: value"];
  }
  const name = textOf(key);
  const unspaced = key.type === "PLAIN" ? UNSPACED.exec(name)?.[1] : undefined;
  if (unspaced !== undefined) return [[...path, unspaced], start, spaceSentence(name, unspaced)];
  if (Object.hasOwn(map, name)) return [[...path, name], start, "the same key stands twice; keep one of them"];
  return undefined;
}

function walkList({ items }: YAMLSeq, path: Path, offset: number, into: Walk): Raw {
  return items.map((item, index) => {
    const figure = partedFigure(item, items[index + 1]);
    // [30,45] are two numbers, [4,5 kg] is one mass.
    if (figure && /\p{L}|["'%]/u.test(figure)) into.fault([...path, index], offset, commaSentence(figure));
    return walk(item, [...path, index], into);
  });
}

/** Where a node begins in the text; `otherwise` where it has no place of its own. */
function startOf(node: unknown, otherwise: number): number {
  return (node as Node | null)?.range?.[0] ?? otherwise;
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
