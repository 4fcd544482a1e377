import { quote } from '../length/quote.ts'
import { type Readings, squareDiagonal } from './gauge.ts'
import { type Reading, readReading, squareSide } from './reading.ts'

/** Readings as a profile's file holds them: `across 148.4mm`, `diagonals 211.9mm 211.5mm`. */
export const readingLines = ({ across, down, diagonals }: Readings): readonly string[] => [
  ...across.map(({ text }) => `across ${text}`),
  ...down.map(({ text }) => `down ${text}`),
  ...diagonals.map(([rising, falling]) => `diagonals ${rising.text} ${falling.text}`),
]

/** The readings of such lines, or the first line that is none and why. */
export const readReadingLines = (lines: readonly string[]): Readings | { readonly error: string } => {
  const across: Reading[] = []
  const down: Reading[] = []
  const diagonals: (readonly [Reading, Reading])[] = []
  for (const line of lines) {
    const [, word, said = ''] = /^(across|down|diagonals) (.+)$/s.exec(line) ?? []
    const bad = (why: string) => ({ error: `its reading ${quote(line)} is none: ${why}` })
    if (word === undefined) return bad('it begins with none of across, down, diagonals')
    if (word === 'diagonals') {
      const pair = readPair(said)
      if (!pair) return bad('give both diagonals, each with its unit')
      diagonals.push(pair)
      continue
    }
    const reading = readReading(said, squareSide)
    if ('error' in reading) return bad(reading.error)
    ;(word === 'across' ? across : down).push(reading)
  }
  return { across, down, diagonals }
}

/** A reading may hold blanks, but begins with no unit and ends in one: they part in one place only. */
const readPair = (said: string): readonly [Reading, Reading] | null => {
  for (let i = said.indexOf(' '); i >= 0; i = said.indexOf(' ', i + 1)) {
    const [rising, falling] = [said.slice(0, i), said.slice(i + 1)].map((text) =>
      readReading(text, squareDiagonal),
    ) as [ReturnType<typeof readReading>, ReturnType<typeof readReading>]
    if (!('error' in rising) && !('error' in falling)) return [rising, falling]
  }
  return null
}
