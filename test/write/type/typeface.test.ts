import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import type { Face } from '../../../src/drawing/drawing.ts'
import { codedLetters } from '../../../src/drawing/letter-code.ts'
import type { Point } from '../../../src/geometry/point.ts'
import { glyphPaths } from '../../../src/write/type/glyph-paths.ts'
import { programBytes } from '../../../src/write/type/program-bytes.ts'
import { fontPrograms } from '../../../src/write/type/programs.ts'
import { readSfnt } from '../../../src/write/type/sfnt.ts'
import { subsetFont } from '../../../src/write/type/subset.ts'
import { familyFont, type OtherFont, otherFont } from '../../support/family.ts'
import { assertNear } from '../../support/near.ts'
import { platform } from '../../support/platform.ts'

const faces = ['regular', 'bold'] as const
const program = (face: Face): Uint8Array => inflateSync(programBytes(face))

test('the sources that hold the face are what the build makes of its family', async () => {
  const { typeSources } = (await import('../../../.build-type.mjs' as string)) as {
    typeSources: () => ReadonlyMap<string, string>
  }
  const sources = [...typeSources()]
  expect(sources).toHaveLength(2)
  for (const [path, text] of sources)
    expect([path, readFileSync(path, 'utf8') === text]).toEqual([path, true])
})

test('both faces together take less than 30 kB of a file', () => {
  expect(faces.reduce((sum, face) => sum + programBytes(face).length, 0)).toBeLessThan(30_000)
})

/** Where a glyph's outline goes, as another library reads it; a curve by its ends and its middle. */
const outlineOf = (glyph: ReturnType<OtherFont['getGlyph']>): readonly Point[] => {
  let at: Point = { x: 0, y: 0 }
  return glyph.path.commands.flatMap(({ command, args }) => {
    const to = { x: args.at(-2)!, y: args.at(-1)! }
    if (command === 'closePath') return []
    const from = at
    at = to
    if (command !== 'quadraticCurveTo') return [to]
    // a quadratic at its half: a quarter of both ends and half of the arm
    const half = (a: number, b: number, c: number): number => a / 4 + b / 2 + c / 4
    return [{ x: half(from.x, args[0]!, to.x), y: half(from.y, args[1]!, to.y) }, to]
  })
}

describe.each(faces)('the embedded face, read by another library, %s', (face) => {
  const [own, whole] = [otherFont(program(face)), familyFont(face)]
  const read = readSfnt(program(face))

  test('has the outline and width of every letter', () => {
    let seen = 0
    for (const [code, letter] of codedLetters()) {
      const [mine, theirs] = [
        own.getGlyph(read.glyphOf(code)),
        whole.glyphForCodePoint(letter.codePointAt(0)!),
      ]
      expect(mine.advanceWidth).toBe(theirs.advanceWidth)
      const points = outlineOf(mine)
      expect([letter, points]).toEqual([letter, outlineOf(theirs)])
      seen += points.length
    }
    expect(seen).toBeGreaterThan(4000)
  })

  test('is drawn by our own reader as that library draws it', () => {
    let seen = 0
    for (const [code] of codedLetters()) {
      const theirs = outlineOf(own.getGlyph(read.glyphOf(code)))
      const mine = glyphPaths(read, read.glyphOf(code), 1).flatMap(({ start, pieces }) => [
        start,
        ...pieces.flatMap((piece, i) => {
          if (piece.kind !== 'cubic') return [piece.to]
          const from = pieces[i - 1]?.to ?? start
          const half = (a: number, b: number, c: number, d: number): number => (a + 3 * b + 3 * c + d) / 8
          const { c1, c2, to } = piece
          return [{ x: half(from.x, c1.x, c2.x, to.x), y: half(from.y, c1.y, c2.y, to.y) }, to]
        }),
      ])
      // where a contour begins, and a line of no length, may differ
      for (const p of theirs) {
        const nearest = Math.min(...mine.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))
        assertNear(nearest, 0, 1e-9)
        seen++
      }
    }
    expect(seen).toBeGreaterThan(4000)
  })
})

test('a font of some letters of the large one keeps their outlines and widths', async () => {
  const { regular } = await platform.wideFont!()
  const font = readSfnt(regular)
  const letters = [...'Łódź Ράμπα Ёж ﻼ Ǻ ᾧ □']
  const glyphs = letters.map((letter) => font.glyphOf(letter.codePointAt(0)!))
  const { bytes, numberOf } = subsetFont(font, glyphs)
  const [some, all] = [otherFont(bytes), otherFont(regular)]
  expect(bytes.length).toBeLessThan(20_000)
  letters.forEach((letter, i) => {
    const [mine, theirs] = [
      some.getGlyph(numberOf.get(glyphs[i]!)!),
      all.glyphForCodePoint(letter.codePointAt(0)!),
    ]
    expect([letter, mine.advanceWidth, outlineOf(mine)]).toEqual([
      letter,
      theirs.advanceWidth,
      outlineOf(theirs),
    ])
  })
})

test('the checksum of the file is what OpenType asks for, so that strict readers take it', () => {
  for (const face of faces) {
    const bytes = program(face)
    const view = new DataView(bytes.buffer, bytes.byteOffset)
    let sum = 0
    for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0
    // OpenType 1.9, head: checksumAdjustment is 0xB1B0AFBA less the sum of all
    expect(sum).toBe(0xb1b0afba)
    expect(bytes.length).toBe(fontPrograms[face].length)
  }
})
