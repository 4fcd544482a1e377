import type { Drawing } from '../drawing/drawing.ts'

/** Ways to draw a note, the best first. */
export type Ways = Iterable<Drawing>

/** One for each place, made when it is asked for: the first is taken more often than not. */
export const waysAt = <T>(places: readonly T[], draw: (place: T) => Drawing): Ways => ({
  *[Symbol.iterator]() {
    for (const place of places) yield draw(place)
  },
})
