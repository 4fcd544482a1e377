import { segmentDistance } from '../../geometry/nearest.ts'
import type { Path } from '../../geometry/path.ts'
import { type Point, pointDistance } from '../../geometry/point.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import { screwRing } from '../../pattern/timber-marks.ts'
import { pointRoom } from '../cover/shown-points.ts'
import { clearUnder, type Occupancy } from '../room/occupancy.ts'
import { on, wordClear } from '../room/word-room.ts'
import { type Tile, tilePoint } from '../tile/tile.ts'
import type { RulerRoom } from './rulers.ts'

/** Between the ticks of a ruler and the ring of a screw, mm. */
const tickAir = 0.8

/** A tick of a ruler is no longer, mm. */
const tickLength = 4

/** Where ticks of rulers and their figures find room on a tile; `drawn`: middles of the screws that it shows, in the pattern. */
export const rulerRoom = (
  tile: Tile,
  { points }: Pattern,
  drawn: readonly Point[],
  room: Occupancy,
): RulerRoom => {
  const rings = points.map(({ at }) => tilePoint(tile, at))
  const screws = drawn.map((at) => tilePoint(tile, at))
  // in an edge or an X a tick would not be seen, in the line that is sawn it would spoil that
  const isClear = ({ start, pieces }: Path): boolean =>
    clearUnder(room, [start, pieces[0]!.to], on.said | on.rather | on.cut)
  // a tick would grow out of the ring of a screw
  const isRinged = ({ start, pieces }: Path): boolean => {
    const { to } = pieces[0]!
    const reach = screwRing + tickAir + pointDistance(start, to)
    return screws.some(
      (at) =>
        Math.abs(at.x - start.x) < reach &&
        Math.abs(at.y - start.y) < reach &&
        segmentDistance({ kind: 'line', from: start, to }, at) < screwRing + tickAir,
    )
  }
  const isFree = (tick: Path): boolean =>
    isClear(tick) &&
    rings.every((p) => pointDistance(p, tick.start) >= pointRoom + tickLength) &&
    !isRinged(tick)
  return {
    isFigured: ({ tick, figure }) => isFree(tick) && wordClear(room, figure, on.never | on.cut | on.rather),
    isOffTimber: ({ figure }) => wordClear(room, figure, on.timber),
    isFree,
  }
}
