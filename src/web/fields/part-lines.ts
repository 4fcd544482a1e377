import { type Design, isCurved, type RampDesign, showLength, showThickness } from '../../index.ts'

type Show = (mm: number) => string

const pair = ([a, b]: readonly [number, number], show: Show): string => `${show(a)} × ${show(b)}`

/** `9 + 9 plywood, 6 hardboard` */
const skinWords = ({ skin }: RampDesign, thick: Show): string => {
  const runs: { material: string; thicknesses: string[] }[] = []
  for (const { thickness, material } of skin) {
    const last = runs.at(-1)
    if (last?.material === material) last.thicknesses.push(thick(thickness))
    else runs.push({ material, thicknesses: [thick(thickness)] })
  }
  return runs.map(({ material, thicknesses }) => `${thicknesses.join(' + ')} ${material}`).join(', ')
}

const pipeWords = ({ coping }: RampDesign, show: Show): string => {
  if (!coping) return 'no pipe'
  const { by, outside } = coping
  return by.kind === 'reveals'
    ? `${show(outside)} thick, stands ${show(by.up)} up and ${show(by.out)} out`
    : `${show(outside)} thick, in a notch ${show(by.along)} along and ${show(by.down)} down`
}

const layerWords = { deck: 'to the deck', frame: 'to the frame', surface: 'to the surface' } as const

/** What a closed part of a ramp says. */
export const rampLines = (ramp: RampDesign, units: Design['units']): Readonly<Record<string, string>> => {
  const show: Show = (mm) => showLength(mm, units)
  const thick: Show = (mm) => showThickness(mm, units)
  const { sides, studs, height } = ramp
  const high = `${show(height.value)} high ${layerWords[height.layer]}`
  return {
    'the ramp': `${high}, ${
      isCurved(ramp) ? `radius ${show(ramp.transition.circle.radius)}` : `${show(ramp.length)} long`
    }, ${show(ramp.width)} wide`,
    frame: `${sides.count} sides of ${thick(sides.thickness)}, studs ${pair(studs.section, show)} every ${show(studs.every)}`,
    skin: skinWords(ramp, thick),
    pipe: pipeWords(ramp, (mm) => showLength(mm, units, { decimals: 1 })),
  }
}

/** What a closed part of the file says. */
export const fileLines = ({ units, stock }: Design): Readonly<Record<string, string>> => {
  const show: Show = (mm) => showLength(mm, units)
  return {
    'buy and saw': `panels ${pair(stock.panel, show)}, timber ${stock.timber.map(show).join(' or ')} long`,
    'title and units': units === 'mm' ? 'in millimetres' : 'in inches',
  }
}
