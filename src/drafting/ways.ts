import type { Drawing } from '../drawing/drawing.ts'

/** Ways to draw a note, the best first. */
export type Ways = Iterable<Drawing>

/** One for each place that is open, made when it is asked for: the first is taken more often than not. */
export const waysAt = <T>(
  places: readonly T[],
  draw: (place: T) => Drawing,
  isOpen: (place: T) => boolean = () => true,
): Ways => ({
  *[Symbol.iterator]() {
    for (const place of places) if (isOpen(place)) yield draw(place)
  },
})
