import type { Point } from '../../geometry/point.ts'

/** A point of an outline; off the line it draws the curve towards itself. */
export interface GlyphPoint extends Point {
  readonly on: boolean
}

/** The contours of a plain glyph (OpenType 1.9, `glyf`), in units of the font. */
export const glyphContours = (outline: DataView): readonly (readonly GlyphPoint[])[] => {
  if (outline.byteLength === 0) return []
  const count = outline.getInt16(0)
  const ends = Array.from({ length: count }, (_, i) => outline.getUint16(10 + 2 * i))
  const points = (ends.at(-1) ?? -1) + 1
  let at = 10 + 2 * count
  at += 2 + outline.getUint16(at)
  const flags: number[] = []
  while (flags.length < points) {
    const flag = outline.getUint8(at++)
    const times = flag & 8 ? outline.getUint8(at++) : 0
    for (let i = 0; i <= times; i++) flags.push(flag)
  }
  /** Steps from point to point: a byte and its sign, nothing, or two bytes. */
  const along = (short: number, same: number): readonly number[] => {
    let value = 0
    return flags.map((flag) => {
      if (flag & short) value += (flag & same ? 1 : -1) * outline.getUint8(at++)
      else if (!(flag & same)) {
        value += outline.getInt16(at)
        at += 2
      }
      return value
    })
  }
  const xs = along(2, 16)
  const ys = along(4, 32)
  const all = flags.map((flag, i): GlyphPoint => ({ x: xs[i]!, y: ys[i]!, on: (flag & 1) === 1 }))
  return ends.map((end, i) => all.slice(i === 0 ? 0 : ends[i - 1]! + 1, end + 1))
}
