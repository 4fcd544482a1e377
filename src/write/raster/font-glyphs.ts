import type { Face } from '../../drawing/drawing.ts'
import { affineApply, affineScale } from '../../geometry/affine.ts'
import type { Path, Piece } from '../../geometry/path.ts'
import { type Point, pointBetween } from '../../geometry/point.ts'
import type { Glyph, GlyphSource } from './raster-text.ts'

/** What is used of a font that fontkit read. */
export interface FontFile {
  readonly hasGlyphForCodePoint: (code: number) => boolean
  readonly glyphForCodePoint: (code: number) => {
    readonly advanceWidth: number
    readonly bbox: { readonly maxY: number }
    readonly path: { readonly commands: readonly FontCommand[] }
  }
}

interface FontCommand {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath'
  readonly args: readonly number[]
}

/** Shown for a letter that the font lacks. */
const box = 0x25a1

/** A font's outlines, each letter read once. */
export const glyphSource = (fonts: Readonly<Record<Face, FontFile>>): GlyphSource => {
  const known = new Map<string, Glyph>()
  return (letter, face) => {
    const key = `${face} ${letter}`
    const glyph = known.get(key) ?? readGlyph(fonts[face], letter)
    known.set(key, glyph)
    return glyph
  }
}

const readGlyph = (font: FontFile, letter: string): Glyph => {
  const code = letter.codePointAt(0)!
  const glyph = font.glyphForCodePoint(font.hasGlyphForCodePoint(code) ? code : box)
  // the H shows how high a capital is
  const scale = 1 / font.glyphForCodePoint(72).bbox.maxY
  return { advance: glyph.advanceWidth * scale, outlines: glyphPaths(glyph.path.commands, scale) }
}

/** A font's commands as closed paths; a quadratic is a cubic with arms of two thirds, exactly. */
const glyphPaths = (commands: readonly FontCommand[], scale: number): readonly Path[] => {
  const paths: { start: Point; pieces: Piece[]; closed: true }[] = []
  for (const { command, args } of commands) {
    const at = (i: number): Point => affineApply(affineScale(scale), { x: args[i]!, y: args[i + 1]! })
    if (command === 'moveTo') {
      paths.push({ start: at(0), pieces: [], closed: true })
      continue
    }
    const path = paths.at(-1)
    if (!path) throw new Error('a letter that does not begin with a move')
    const from = path.pieces.at(-1)?.to ?? path.start
    if (command === 'lineTo') path.pieces.push({ kind: 'line', to: at(0) })
    else if (command === 'quadraticCurveTo')
      path.pieces.push({
        kind: 'cubic',
        c1: pointBetween(from, at(0), 2 / 3),
        c2: pointBetween(at(2), at(0), 2 / 3),
        to: at(2),
      })
    else if (command === 'bezierCurveTo') path.pieces.push({ kind: 'cubic', c1: at(0), c2: at(2), to: at(4) })
  }
  return paths
}
