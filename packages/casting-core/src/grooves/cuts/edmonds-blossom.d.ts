declare module "edmonds-blossom" {
  /** Mate of each node (−1 for none) in a matching of greatest weight among `[a, b, weight]`, or among the largest ones. */
  export default function blossom(edges: [number, number, number][], largest?: boolean): number[];
}
