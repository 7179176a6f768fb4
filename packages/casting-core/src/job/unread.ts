import { CastingError, type Fault } from "../errors.js";
import { isAbove, type Path } from "./tree.js";

/*
 * Rules are written for a whole job and do not say at which keys they look. Where a job was read in part they are given
 * one that throws `Unread` at what is missing, and a rule that throws it tells nothing: what it would tell only follows
 * from the fault that the missing key has already.
 */

/** Thrown where a rule looks at what could not be read; without faults, so that whoever catches it has none to tell. */
class Unread extends CastingError {
  constructor() {
    super("invalid", []);
  }
}

/** `value` that throws `Unread` where it is asked for a key at or below one of the paths `unread`. */
export function guardUnread<T>(value: T, unread: readonly Path[], path: Path = []): T {
  if (typeof value !== "object" || value === null) return value;
  const look = (key: string | symbol): Path => {
    const at = [...path, Array.isArray(value) ? Number(String(key)) : String(key)];
    if (unread.some((other) => isAbove(other, at))) throw new Unread();
    return at;
  };
  return new Proxy(value, {
    get: (target, key) => guardUnread(Reflect.get(target, key), unread, look(key)),
    has: (target, key) => look(key) !== undefined && Reflect.has(target, key),
  });
}

/** What `find` tells; nothing where it looks at what could not be read. */
export function unlessUnread(find: () => Fault[]): Fault[] {
  try {
    return find();
  } catch (error) {
    if (error instanceof Unread) return [];
    throw error;
  }
}

/** What `find` tells of each item by itself: one that could not be read does not silence the others. */
export function faultsOfEach<T>(items: readonly T[], find: (item: T, index: number) => Fault[]): Fault[] {
  // By index: the item itself is looked at only where its throwing is caught.
  return Array.from({ length: items.length }, (_, index) => unlessUnread(() => find(items[index]!, index))).flat();
}
