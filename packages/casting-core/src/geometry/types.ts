/** A point or a vector: [x, y], mm, y up. */
export type Point = [number, number];

/** A closed outline: corners counter-clockwise, the last one joined to the first. */
export type Outline = Point[];
