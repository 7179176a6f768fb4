declare module "svgdom" {
  /** A window with an empty SVG document. */
  export function createSVGWindow(): { document: { documentElement: unknown } };
}
