/**
 * Numbers in rising order moved as little as can be (least squares), so that each is at least `apart` from the next: neighbours
 * that would be too near are pooled and share their move (pool adjacent violators, Barlow and others, 1972).
 */
export const spread = (wanted: readonly number[], apart: number): readonly number[] => {
  const pools: { sum: number; count: number }[] = []
  wanted.forEach((at, i) => {
    pools.push({ sum: at - i * apart, count: 1 })
    for (;;) {
      const [last, before] = [pools.at(-1)!, pools.at(-2)]
      if (!before || before.sum / before.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count })
    }
  })
  return pools
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((v, i) => v + i * apart)
}
