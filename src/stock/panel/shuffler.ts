/** Orders near to a given one: one to three pairs change places. The same ones each time it is made. */
export const shuffler = (): ((order: readonly number[]) => readonly number[]) => {
  // a linear congruence is random enough to shuffle (Numerical Recipes, 3rd ed., 7.1)
  let state = 12_345
  const below = (n: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * n)
  }
  return (order) => {
    const next = [...order]
    for (let swaps = 1 + below(3); swaps > 0; swaps--) {
      const [i, k] = [below(next.length), below(next.length)]
      ;[next[i], next[k]] = [next[k]!, next[i]!]
    }
    return next
  }
}
