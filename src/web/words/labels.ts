import { rowKey, schema } from '../../index.ts'
import { isList } from './list.ts'

/** What a field is called: the words of the file, in the order in which one says them. */
const labels: Readonly<Record<string, string>> = {
  'stores-inside.ramp': 'stores inside ramp',
  'stores-inside.clearance': 'stores inside with clearance',
  'height.frame': 'frame height',
  'height.deck': 'deck height',
  'height.surface': 'surface height',
  'transition.circle.frame': 'frame radius',
  'transition.circle.surface': 'surface radius',
  'transition.tangent.frame': 'frame tangent height',
  'transition.tangent.surface': 'surface tangent height',
  toe: 'toe height',
  deck: 'deck length',
  length: 'side length',
  'sides.thickness': 'side thickness',
  'sides.count': 'sides, how many',
  'studs.section': 'stud section',
  'studs.every': 'studs every',
  'studs.deck': 'deck studs every',
  'studs.foot': 'foot studs',
  'studs.foot.every': 'foot studs every',
  'studs.foot.to': 'foot studs up to',
  skin: 'skin layers',
  fasten: 'fasten the skin to',
  'run-out.sheet': 'run-out sheet',
  'run-out.step-back': 'run-out steps back',
  'deck-board': 'deck board',
  coping: 'coping pipe',
  'coping.outside': 'pipe, outside',
  'coping.material': 'pipe material',
  'coping.holes.ends': 'pipe holes from the ends',
  'coping.holes.every': 'pipe holes every',
  'coping.up': 'pipe up',
  'coping.out': 'pipe out',
  'coping.notch': 'notch by its size',
  'coping.notch.along': 'notch along',
  'coping.notch.down': 'notch down',
  'coping.seat': 'notch seat',
  'chamfer.leg': 'chamfer leg',
  lip: 'lip angle',
  'limits.panels': 'limit of panels',
  'limits.length': 'limit of side length',
  'limits.lip': 'limits of lip angle',
  'limits.paper': 'limit of pages',
  'wheels.diameter': 'wheel diameter',
  'wheels.height': 'wheel height',
  'wheels.count': 'wheels, how many',
  'stock.panel': 'panel size',
  'stock.timber': 'timber lengths',
  'stock.pipe': 'pipe lengths',
  'stock.kerf': 'saw kerf',
  'stock.trim': 'panel trim',
  'stock.panels': 'panels by sheet',
  'stock.offcuts': 'offcuts',
  'space.garage': 'garage floor',
  'space.door': 'garage door',
  'space.ceiling': 'garage ceiling',
}

const lists: ReadonlySet<string> = new Set(schema.filter(isList).map(rowKey))

/** `ramps[0].height.deck` of a problem as a field's path, `ramps.0.height.deck`; what is wrong with an entry of a list is so with its field. */
export const pathOfKey = (path: string): string =>
  path
    .replace(/([\w-]+)\[\d+\]$/, (entry, key) => (lists.has(key) ? key : entry))
    .replaceAll(/\[(\d+)\]/g, '.$1')

/** Of a key by its path in the file, ramps by number: `ramps.0.height.deck` is `deck height`. */
export const labelOf = (path: string): string => {
  const own = path.replace(/^ramps\.\d+\./, '').replace(/^ramps(?=\.\d)/, 'ramp')
  return (
    labels[own] ??
    // counted from 1, as one counts
    own.replaceAll(/\.(\d+)/g, (_, place) => ` ${Number(place) + 1}`).replaceAll('.', ' ')
  )
}
