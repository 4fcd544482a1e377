/**
 * Numbers in rising order moved as little as can be (least squares), so that each is at least `apart` from the next, or as far as is
 * said of each pair: neighbours that would be too near are pooled and share their move (pool adjacent violators, Barlow and others,
 * 1972). None comes to lie past `most`.
 */
export const spread = (
  wanted: readonly number[],
  apart: number | readonly number[],
  most = Number.POSITIVE_INFINITY,
): readonly number[] => {
  const ahead = [0]
  for (let i = 1; i < wanted.length; i++)
    ahead.push(ahead[i - 1]! + (typeof apart === 'number' ? apart : apart[i - 1]!))
  const limit = most - ahead.at(-1)!
  const pools: { sum: number; count: number }[] = []
  wanted.forEach((at, i) => {
    pools.push({ sum: at - ahead[i]!, count: 1 })
    for (;;) {
      const [last, before] = [pools.at(-1)!, pools.at(-2)]
      if (!before || before.sum / before.count <= last.sum / last.count) break
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count })
    }
  })
  return pools
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((v, i) => Math.min(v, limit) + ahead[i]!)
}
