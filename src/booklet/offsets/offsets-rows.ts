import type { Point } from '../../geometry/point.ts'
import { showLength, type Units } from '../../length.ts'
import type { Offsets } from '../../ramp/offsets.ts'

/** One line of the table, and the mark of that name on the drawing. */
export interface OffsetRow {
  /** number of a station, letter of a corner, TOE or LIP */
  readonly mark: string
  readonly at: Point
  /** back from the front edge, up from the bottom edge, in the builder's units */
  readonly back: string
  readonly up: string
  /** which of the two is measured last, on the line that the other one gives */
  readonly measured: 'back' | 'up' | 'both'
  /** what it is, where a number does not say it */
  readonly words: string
}

/** A length as it is marked out: tenths of a mm, 1/32 in. */
export const showOffset = (mm: number, units: Units, unit = false): string =>
  showLength(mm, units, { decimals: 1, unit })

const cornerLetters = 'ABCDEFGH'

/** From the toe up the curve to the lip, then the notch. */
export const offsetRows = (offsets: Offsets, units: Units): readonly OffsetRow[] => {
  const { stations, toe, lip, notch, seat } = offsets
  const row = (mark: string, at: Point, measured: OffsetRow['measured'], words: string): OffsetRow => ({
    mark,
    at: { x: at.x, y: at.y },
    back: showOffset(at.x, units),
    up: showOffset(at.y, units),
    measured,
    words,
  })
  return [
    row('TOE', toe, 'both', toe.y > 0 ? 'top of the front edge' : 'on the bottom edge'),
    ...stations.map((station, i) =>
      row(
        `${i + 1}`,
        station,
        station.by === 'along' ? 'up' : 'back',
        station.cutAway ? 'for the batten only' : '',
      ),
    ),
    row('LIP', lip, 'both', notch.length > 0 ? 'for the batten only' : 'on the top line'),
    ...notch.map((corner, i) => row(cornerLetters[i]!, corner, 'both', corner.name)),
    ...(seat
      ? [
          row(
            cornerLetters[notch.length]!,
            seat.centre,
            'both',
            `middle of the seat, radius ${showOffset(seat.radius, units)}`,
          ),
        ]
      : []),
  ]
}
