import { Encodings, Font } from '@pdf-lib/standard-fonts'
import { describe, expect, test } from 'vitest'
import { helveticaCapHeight, helveticaWidths } from '../../src/drawing/helvetica.ts'
import { textWidth } from '../../src/drawing/text-width.ts'
import { isWinAnsi, winAnsiCode } from '../../src/drawing/win-ansi.ts'
import { assertNear } from '../support/near.ts'

const fonts = { regular: Font.load('Helvetica'), bold: Font.load('Helvetica-Bold') }

describe('Helvetica, against the AFM files in @pdf-lib/standard-fonts', () => {
  test('the capital height is that of both faces', () => {
    expect([fonts.regular.CapHeight, fonts.bold.CapHeight]).toEqual([helveticaCapHeight, helveticaCapHeight])
  })

  test('a letter has the WinAnsi code of the package, or none as there', () => {
    const wrong: number[] = []
    for (let point = 32; point < 0x10000; point++) {
      if (point >= 0xd800 && point < 0xe000) continue
      const theirs = Encodings.WinAnsi.canEncodeUnicodeCodePoint(point)
        ? Encodings.WinAnsi.encodeUnicodeCodePoint(point).code
        : undefined
      if (winAnsiCode(String.fromCodePoint(point)) !== theirs) wrong.push(point)
    }
    expect(wrong).toEqual([])
  })

  test.each(['regular', 'bold'] as const)('every WinAnsi letter has its AFM width, %s', (face) => {
    expect(Encodings.WinAnsi.supportedCodePoints).toHaveLength(218)
    expect(helveticaWidths[face]).toHaveLength(224)
    for (const point of Encodings.WinAnsi.supportedCodePoints) {
      const { code, name } = Encodings.WinAnsi.encodeUnicodeCodePoint(point)
      expect([name, helveticaWidths[face][code - 32]]).toEqual([name, fonts[face].getWidthOfGlyph(name)])
    }
  })
})

test('a text is as wide as its letters, scaled from the capital height', () => {
  // AFM: A 667, period 278, one 556
  assertNear(textWidth('A1.', 7.18, 'regular'), 6.67 + 5.56 + 2.78, 1e-9)
  assertNear(textWidth('', 7.18, 'bold'), 0, 0)
})

test('a letter outside WinAnsi counts 0.7 em, an emoji once', () => {
  assertNear(textWidth('ł', 7.18, 'regular'), 7, 1e-9)
  assertNear(textWidth('🛹', 7.18, 'bold'), 7, 1e-9)
})

test('an accent typed as two characters counts as one letter', () => {
  assertNear(textWidth('e\u0301', 5, 'regular'), textWidth('é', 5, 'regular'), 0)
})

test('isWinAnsi tells what the standard fonts print', () => {
  expect(['Rampe für Zoë – “low”', 'e\u0301', '½ € Ž'].map(isWinAnsi)).toEqual([true, true, true])
  expect(['≤', 'Łódź', 'ράμπα', 'ランプ', 'a\nb', '\u0085', '′'].map(isWinAnsi)).toEqual(Array(7).fill(false))
})
