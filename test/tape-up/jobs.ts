import { randomFrom } from '../support/random.ts'
import type { Job } from './plot.ts'

const degree = Math.PI / 180

/**
 * A job that a builder might have: a low to middling ramp for the boathouse on whatever paper he has. Most solve; some do not,
 * as with builders. The same number gives the same job.
 */
export const jobOf = (number: number): Job => {
  const next = randomFrom(number * 7919 + 1)
  const between = (low: number, high: number): number => low + (high - low) * next()
  const among = <T>(...of: readonly T[]): T => of[Math.floor(next() * of.length)]!
  const chance = (share: number): boolean => next() < share

  const inches = chance(0.4)
  // as a builder would write it: tenths of a millimetre, or sixteenths
  const round = (mm: number): number =>
    inches ? (Math.round((mm / 25.4) * 16) / 16) * 25.4 : Math.round(mm * 10) / 10
  const show = (mm: number): string => {
    if (!inches) return String(round(mm))
    const sixteenths = Math.round((Math.abs(mm) / 25.4) * 16)
    const [whole, part] = [Math.floor(sixteenths / 16), sixteenths % 16]
    const sign = mm < 0 && sixteenths > 0 ? '-' : ''
    return `${sign}${part === 0 ? whole : `${whole > 0 ? `${whole} ` : ''}${part}/16`}`
  }

  const layers = Array.from({ length: among(1, 2, 3, 3, 4) }, () => round(among(6.5, 9.5, 9.5, 12)))
  const skin = layers.reduce((sum, layer) => sum + layer, 0)
  const board = chance(0.25) ? 0 : round(between(9, 19))
  const height = round(between(300, 1200))
  const angle = between(34, 79) * degree
  const tangentLayer = chance(0.65) ? 'surface' : 'frame'
  const tangent = chance(0.6) ? 0 : round(between(-15, 60))
  const radius = round(Math.max(320, (height - tangent) / (1 - Math.cos(angle))))
  const radiusLayer = among('frame', 'surface')
  // the frame's own lowest point: no toe can be lower
  const lowest = tangentLayer === 'frame' ? tangent : tangent - skin
  const toe = chance(0.1) && lowest <= 0 ? 0 : round(Math.max(0, lowest) + between(3, 70))
  const deck = round(between(150, 800))
  const run = radius * Math.sin(angle) - Math.sqrt(2 * radius * Math.max(0, toe - lowest))
  const outside = round(among(33.7, 42.4, 48.3, 60.3, 60.3, 76.1))
  const seat = among('square', 'square', 'round')
  const coping = chance(0.2)
    ? 'none'
    : chance(0.35)
      ? `{ outside: ${show(outside)}, notch: { along: ${show(outside * between(0.65, 0.95))}, down: ${show(outside * between(0.35, 0.8))} }, seat: ${seat} }`
      : `{ outside: ${show(outside)}, up: ${show(between(0, 14))}, out: ${show(between(-2, 12))}, seat: ${seat} }`
  const lines = [
    `title: Boathouse trial ${number}`,
    `units: ${inches ? 'in' : 'mm'}`,
    'ramps:',
    '  - kind: quarter',
    `    width: ${show(between(900, 2440))}`,
    `    height: { ${among('frame', 'deck', 'surface')}: ${show(height)} }`,
    `    transition: { circle: { ${radiusLayer}: ${show(radius)} }, tangent: { ${tangentLayer}: ${show(tangent)} } }`,
    `    toe: ${show(toe)}`,
    chance(0.7) ? `    deck: ${show(deck)}` : `    length: ${show(Math.max(210, run + deck))}`,
    `    sides: { thickness: ${show(18)}, count: ${among(2, 2, 3, 4)} }`,
    `    studs: { section: ${among(show(38), show(45))} x ${among(show(89), show(95), show(64))}, every: ${show(between(150, 400))} }`,
    `    skin: [${layers.map((layer) => `${show(layer)} plywood`).join(', ')}]`,
    `    deck-board: ${board === 0 ? 'none' : `${show(board)} plywood`}`,
    `    coping: ${coping}`,
    `    chamfer: ${chance(0.55) ? 'none' : `{ leg: ${show(between(12, 0.45 * height))} }`}`,
    '',
  ]
  const margin = (): number => round(between(4, 26))
  const one = margin()
  const margins = chance(0.5)
    ? undefined
    : chance(0.4)
      ? { top: one, right: one, bottom: one, left: one }
      : { top: margin(), right: margin(), bottom: margin(), left: margin() }
  return {
    text: lines.join('\n'),
    paper: among('letter', 'letter', 'a4', 'a4', 'legal', 'tabloid', 'a3', 'a2', 'a1'),
    cover: among('whole', 'line', 'ribbon'),
    ...(margins ? { margins } : {}),
    ...(chance(0.4) ? { overlap: round(between(8, 30)) } : {}),
  }
}
