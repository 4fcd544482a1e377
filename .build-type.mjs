import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { buildSync } from 'esbuild'
import { zlibSync } from 'fflate'

/**
 * The face of every page: the letters of `src/drawing/letter-code.ts` taken out of a free family, regular and bold. Widths go into
 * `src/drawing/typeface.ts`, the fonts as they are put into a PDF into `src/write/type/programs.ts`. Same family, same bytes:
 * zlib differs from Node to Node, so the packing is fflate's.
 */
const load = createRequire(import.meta.url)
const family = '@expo-google-fonts/ibm-plex-sans-condensed'
const files = { regular: '400Regular/IBMPlexSansCondensed_400Regular', bold: '700Bold/IBMPlexSansCondensed_700Bold' }

const sources = async (entry) => {
  const { outputFiles } = buildSync({ stdin: { contents: entry, resolveDir: import.meta.dirname }, bundle: true, format: 'esm', write: false })
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`)
}

const { codedLetters, glyphBox, readSfnt, subsetFont } = await sources(`
  export { codedLetters } from './src/drawing/letter-code.ts'
  export { glyphBox } from './src/write/type/glyph-box.ts'
  export { readSfnt } from './src/write/type/sfnt.ts'
  export { subsetFont } from './src/write/type/subset.ts'
`)

/** A face of the family: where its letters are, what they measure, its font of these letters alone. */
const faceOf = (file) => {
  const font = readSfnt(readFileSync(load.resolve(`${family}/${file}.ttf`)))
  if (font.unitsPerEm !== 1000) throw new Error('widths are told per 1000 em')
  const codes = new Map()
  for (const [code, letter] of codedLetters()) {
    const glyph = font.glyphOf(letter.codePointAt(0))
    if (glyph === 0) throw new Error(`${file} has no ${letter}`)
    codes.set(code, glyph)
  }
  const { bytes } = subsetFont(font, [...codes.values()], codes)
  return {
    widths: Array.from({ length: 255 }, (_, i) => (codes.has(i + 1) ? font.advance(codes.get(i + 1)) : 0)),
    capital: glyphBox(font, codes.get(72))[3],
    measures: { box: font.box, ascent: font.ascent, descent: font.descent, length: bytes.length },
    packed: zlibSync(bytes, { level: 9, mem: 12 }),
  }
}

const rows = (list) => {
  const lines = []
  for (let i = 0; i < list.length; i += 16) lines.push(`    ${list.slice(i, i + 16).join(', ')},`)
  return lines.join('\n')
}

/** The two generated sources, by path. */
export const typeSources = () => {
  const faces = Object.entries(files).map(([face, file]) => [face, faceOf(file)])
  const capital = faces[0][1].capital
  if (faces.some(([, face]) => face.capital !== capital)) throw new Error('capitals of two heights')
  const table = `import type { Face } from './drawing.ts'

// written by .build-type.mjs

/** Height of a capital letter per 1000 em, regular and bold. */
export const capitalHeight = ${capital}

/** Advance widths per 1000 em of the codes 1 … 255 of \`letter-code.ts\`, sixteen a row; 0 where no letter is. */
// biome-ignore format: a table
export const faceWidths: Readonly<Record<Face, readonly number[]>> = {
${faces.map(([face, { widths }]) => `  ${face}: [\n${rows(widths)}\n  ],`).join('\n')}
}
`
  const programs = `import type { Face } from '../../drawing/drawing.ts'
import type { FontProgram } from './font-program.ts'

// written by .build-type.mjs

/**
 * Letters of a free family, Copyright 2017 IBM Corp., under the SIL Open Font License 1.1 (docs/font-license.txt), as a font of their
 * own name.
 */
// biome-ignore format: a table
export const fontPrograms: Readonly<Record<Face, FontProgram>> = {
${faces
  .map(
    ([face, { measures, packed }]) =>
      `  ${face}: {\n    box: [${measures.box.join(', ')}],\n    ascent: ${measures.ascent},\n    descent: ${measures.descent},\n    length: ${measures.length},\n    packed:\n      '${Buffer.from(packed).toString('base64')}',\n  },`,
  )
  .join('\n')}
}
`
  return new Map([
    ['src/drawing/typeface.ts', table],
    ['src/write/type/programs.ts', programs],
  ])
}

/** Writes what differs. */
export const writeTypeSources = () => {
  for (const [path, text] of typeSources()) {
    let before = ''
    try {
      before = readFileSync(path, 'utf8')
    } catch {}
    if (before !== text) writeFileSync(path, text)
  }
}
