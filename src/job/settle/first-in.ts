/** The first of so many that is good, where all behind it are; else the end. */
export const firstIn = (count: number, good: (at: number) => boolean): number => {
  for (let [at, bad] = [0, -1]; at < count; ) {
    if (good(at)) {
      for (let best = at; ; ) {
        if (best - bad <= 1) return best
        const middle = Math.floor((bad + best) / 2)
        if (good(middle)) best = middle
        else bad = middle
      }
    }
    bad = at
    at = at < count - 1 ? Math.min(count - 1, at + Math.max(1, Math.floor(at / 4))) : count
  }
  return count
}
