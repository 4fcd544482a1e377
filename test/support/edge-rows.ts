export type Edge = readonly [ax: number, ay: number, bx: number, by: number]

/** Edges that are not level, by the rows so high that they reach into: what a height asks is few of them. */
export const edgeRows = (edges: Iterable<Edge>, high: number): ((y: number) => readonly Edge[]) => {
  const rows = new Map<number, Edge[]>()
  for (const edge of edges) {
    const [, ay, , by] = edge
    if (ay === by) continue
    for (let row = Math.floor(Math.min(ay, by) / high); row <= Math.max(ay, by) / high; row++) {
      const own = rows.get(row) ?? []
      own.push(edge)
      rows.set(row, own)
    }
  }
  return (y) => rows.get(Math.floor(y / high)) ?? []
}
