import type { Page } from 'playwright-core'

/** Words of the drawing that lie over each other or run off it, and how many were looked at; letters that only touch are let be. */
export const wordsOver = (
  page: Page,
): Promise<{ readonly faults: readonly string[]; readonly looked: number }> =>
  page.evaluate(() => {
    type Corner = readonly [number, number]
    const svg = document.querySelector('.picture svg')!
    const words = [...svg.querySelectorAll('text')]
      .filter(({ textContent }) => textContent!.trim() !== '')
      .map((text) => {
        const { x, y, width, height } = text.getBBox()
        const { a, b, c, d, e, f } = text.getScreenCTM()!
        // a box is higher than its letters
        const [top, bottom] = [y + height * 0.18, y + height * 0.82]
        const corners = [
          [x, top],
          [x + width, top],
          [x + width, bottom],
          [x, bottom],
        ].map(([u, v]): Corner => [a * u! + c * v! + e, b * u! + d * v! + f])
        return { said: text.textContent!, corners }
      })
    /** Two boxes lie apart along one of their own sides, or not at all. */
    const depth = (one: readonly Corner[], other: readonly Corner[]): number =>
      Math.min(
        ...[one, other].flatMap((box) =>
          [0, 1].map((i) => {
            const [dx, dy] = [box[i + 1]![0] - box[i]![0], box[i + 1]![1] - box[i]![1]]
            const along = (corners: readonly Corner[]): readonly number[] =>
              corners.map(([x, y]) => (x * dx + y * dy) / Math.hypot(dx, dy))
            const [first, second] = [along(one), along(other)]
            return (
              Math.min(Math.max(...first), Math.max(...second)) -
              Math.max(Math.min(...first), Math.min(...second))
            )
          }),
        ),
      )
    const frame = svg.getBoundingClientRect()
    const faults = words.flatMap((one, i) => [
      ...words
        .slice(i + 1)
        .filter((other) => depth(one.corners, other.corners) > 1)
        .map((other) => `${one.said} lies over ${other.said}`),
      ...(one.corners.some(
        ([x, y]) => x < frame.left - 1 || x > frame.right + 1 || y < frame.top - 1 || y > frame.bottom + 1,
      )
        ? [`${one.said} runs off`]
        : []),
    ])
    return { faults, looked: words.length }
  })
