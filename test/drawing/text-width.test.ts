import { Encodings } from '@pdf-lib/standard-fonts'
import { describe, expect, test } from 'vitest'
import { codedLetters, isCoded, letterCode } from '../../src/drawing/letter-code.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import { capitalHeight, faceWidths } from '../../src/drawing/typeface.ts'
import { familyFont } from '../support/family.ts'
import { assertNear } from '../support/near.ts'

describe('codes of letters', () => {
  test('are those of WinAnsi in @pdf-lib/standard-fonts where that has one', () => {
    const wrong: number[] = []
    let seen = 0
    for (let point = 32; point < 0x10000; point++) {
      if (point >= 0xd800 && point < 0xe000) continue
      if (!Encodings.WinAnsi.canEncodeUnicodeCodePoint(point)) continue
      seen++
      if (letterCode(String.fromCodePoint(point)) !== Encodings.WinAnsi.encodeUnicodeCodePoint(point).code)
        wrong.push(point)
    }
    expect(seen).toBe(218)
    expect(wrong).toEqual([])
  })

  test('are of one letter each, from 1 to 255, and lead back to it', () => {
    const letters = codedLetters()
    expect(new Set(letters.map(([code]) => code)).size).toBe(letters.length)
    for (const [code, letter] of letters) expect([letter, letterCode(letter)]).toEqual([letter, code])
    expect(Math.min(...letters.map(([code]) => code))).toBe(1)
    expect(Math.max(...letters.map(([code]) => code))).toBe(255)
  })
})

describe.each(['regular', 'bold'] as const)("the face of the pages against its family's file, %s", (face) => {
  const font = familyFont(face)

  test('every letter is as wide as there', () => {
    for (const [code, letter] of codedLetters())
      expect([letter, faceWidths[face][code - 1]]).toEqual([
        letter,
        font.glyphForCodePoint(letter.codePointAt(0)!).advanceWidth,
      ])
  })

  test('a capital is as high as there', () => {
    expect(font.glyphForCodePoint(72).bbox.maxY).toBe(capitalHeight)
  })

  test('figures are of one width, and 1, l and I are drawn apart', () => {
    expect(new Set([...'0123456789'].map((figure) => textWidth(figure, 1, face))).size).toBe(1)
    // an I with serifs is wider than its stem, an l with a tail reaches to the right of it
    const [one, el, eye] = [...'1lI'].map((letter) => font.glyphForCodePoint(letter.codePointAt(0)!))
    const width = (glyph: typeof one): number => glyph!.bbox.maxX - glyph!.bbox.minX
    const stem = font.glyphForCodePoint('|'.codePointAt(0)!)
    for (const glyph of [one, el, eye]) expect(width(glyph)).toBeGreaterThan(1.5 * width(stem))
    expect(el!.bbox.maxY).toBeGreaterThan(eye!.bbox.maxY)
  })
})

test('a text is as wide as its letters, scaled from the capital height', () => {
  // the family's file: A 579, period 248, one 540
  assertNear(textWidth('A1.', 6.98, 'regular'), 5.79 + 5.4 + 2.48, 1e-9)
  assertNear(textWidth('', 6.98, 'bold'), 0, 0)
})

test('a letter without a code counts 0.7 em, an emoji once', () => {
  assertNear(textWidth('ł', 6.98, 'regular'), 7, 1e-9)
  assertNear(textWidth('🛹', 6.98, 'bold'), 7, 1e-9)
})

test('an accent typed as two characters counts as one letter', () => {
  assertNear(textWidth('e\u0301', 5, 'regular'), textWidth('é', 5, 'regular'), 0)
})

test('isCoded tells what our own face prints', () => {
  expect(['Rampe für Zoë – “low”', 'e\u0301', '½ € Ž', 'r ≤ 3′ 2″ → lip', '17 ⅜'].map(isCoded)).toEqual(
    Array(5).fill(true),
  )
  expect(['Łódź', 'ράμπα', 'ランプ', 'a\nb', '\u0085', '\u0001'].map(isCoded)).toEqual(Array(6).fill(false))
})
