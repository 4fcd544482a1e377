import { curvedOf, isCurved } from '../../../design/kind-traits.ts'
import type { Point } from '../../../geometry/point.ts'
import { capital } from '../../../length/capital.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { wordList } from '../../../length/word-list.ts'
import { runOutSheet } from '../../../ramp/beside/run-out-sheet.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { Flat, SolvedRamp } from '../../../ramp/ramp.ts'
import { screwHead } from '../../../ramp/screws/screw-sort.ts'
import { comesOut, type Low } from '../../../ramp/stored.ts'
import { boltRoom, boltsFromMiddle, gripHoles, grips } from '../../../stock/handle.ts'
import type { Moving } from '../../../stock/moving.ts'
import { liftersOf } from '../../../stock/weight.ts'
import { stockLines, stockRows } from '../../stock-rows.ts'
import { handleView } from '../../views/acts/act-views.ts'
import { nestView } from '../../views/acts/nest-view.ts'
import { type Block, caution, check, type FixedBlock, head, named, step, together, words } from '../block.ts'
import { type Book, hasSkin, leastShare, screwsOf } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { stage } from '../stage.ts'
import { storeSteps } from '../store-words.ts'
import { namedChecks } from './framing.ts'

export const moving = (book: Book): Section => {
  const { width, solved, stock, design, piped } = book
  const sheeted = solved.ramps.some(({ design: { runOut } }) => runOut?.kind === 'sheet')
  const hard = [...(solved.ramps.some(hasSkin) ? ['skin'] : []), ...(piped ? ['pipe'] : [])]
  // the room that two take together stands on their drawing
  const drawn = nests(book)
  let number = 0
  const next = (said: string, room = width): FixedBlock => step(++number, said, room)
  return {
    name: 'moving',
    title: 'Storing and moving',
    blocks: [
      head('Storing and moving', width),
      heavy(book),
      ...(solved.ramps.some(({ wheels }) => wheels)
        ? [caution(`${toeLifters(book)} Wheels have no brake: block them on any slope.`, width)]
        : []),
      ...solved.ramps.flatMap((ramp) =>
        stockRows(ramp.name, stock, design.units)
          // its weight and size stand on the first page
          .slice(book.asked.includes('glance') ? 1 : 0)
          .map(([label, said]) =>
            words(`${capital(book.several ? `${ramp.name}, ${label}` : label)}: ${said}.`, width),
          ),
      ),
      ...stockLines(drawn.length > 0 ? { ...stock, sets: [] } : stock, design)
        .slice(1)
        .map((line) => words(`${capital(line)}.`, width)),
      ...namedChecks(book, ['pushed-back']),
      ...solved.ramps.flatMap((ramp) => fitBlocks(book, ramp, next)),
      ...together(
        [...storeSteps(book).map(({ ramp, said }) => named(`stored ${ramp}`, next(said))), ...drawn],
        book.tall,
      ),
      ...namedChecks(book, ['stores-fit'], (name) => !goesIn(book, name)),
      next(
        `Measure doors and corners first. ${sheeted ? `${offFirst(book)} ` : ''}Lift at the sides${hard.length > 0 ? `, never at ${hard.join(' or ')}` : ''}. Walk it on ${curvedOf(solved.ramps).length > 0 ? 'its back edge' : 'one end'} over boards only.`,
      ),
      next('Store it dry and off the ground, on two battens, under a cover that lets air through.'),
      check('Where it stands nobody can climb on it unseen; its place is level and it does not rock.', width),
    ],
  }
}

/** The run-out, and what becomes of screws that it is taken off again and again. */
const offFirst = ({ solved, design, units }: Book): string => {
  const ends = curvedOf(solved.ramps).flatMap(
    (ramp) => runOutSheet(ramp, design.stock, units)?.row?.into ?? [],
  )
  const worn = [
    ...(ends.includes('stud') ? ['set threaded inserts in stud 1 and take machine screws as thick'] : []),
    ...(ends.includes('skin')
      ? [`${ends.includes('stud') ? 'in the skin alone, ' : ''}take short bolts, heads sunk, nuts below`]
      : []),
  ]
  return `Take the run-out off first${worn.length > 0 ? `; where its screws no longer bite, ${worn.join('; ')}` : ''}.`
}

/** Whether a step tells how it goes in whole. */
const goesIn = ({ stock }: Book, name: string): boolean =>
  stock.storings.some(
    ({ ramp, slid, stored }) => ramp === name && stored && slid.some(({ out }) => out <= 0.5),
  )

const outWords = ({ timber, numbers, wheels }: Low): string => {
  if (!comesOut(timber)) return ''
  const come = numbers.length === 1 ? 'is the timber that comes out' : 'are the timbers that come out'
  return `: dashed ${come}${wheels ? ' with the wheels' : ''}`
}

/** Each of them put away, drawn. */
const nests = (book: Book): readonly Block[] => {
  const { stock, solved, units, width } = book
  const quarters = curvedOf(solved.ramps)
  return stock.storings.flatMap((storing) => {
    const [inner, outer] = [storing.ramp, storing.outer].map((one) =>
      quarters.find(({ name }) => name === one),
    )
    if (!storing.stored || !inner || !outer) return []
    const [long, , high] = storing.stored
    return [
      figure(
        `${inner.name} put away in ${outer.name}${outWords(storing.low)}`,
        (ratio) => nestView(inner, outer, storing, units, ratio),
        book,
        { width, height: 80 * Math.max(leastShare, book.share) },
        { width: long, height: high },
      ),
    ]
  })
}

/** Before a ramp is lifted or tipped. */
export const heavy = (book: Book): Block =>
  caution(
    `Ramps are heavy and tip. ${lifters(book)}; nobody stands under it or between it and a wall.`,
    book.width,
  )

/** `4 people lift outer, 3 inner` */
const lifters = ({ stock, several }: Book): string =>
  stock.weight.ramps
    .map(({ ramp, people }, i) => `${people}${i === 0 ? ' people lift' : ''} ${several ? ramp : 'it'}`)
    .join(', ')

/** `2 people lift at the toe of outer, 3 at that of inner.`: what rolls, by the most that its wheels leave in the hands */
const toeLifters = ({ stock, several }: Book): string => {
  const rolling = stock.moving.flatMap(({ ramp, rolling }) =>
    rolling ? [{ ramp, people: liftersOf(rolling.hands.most) }] : [],
  )
  const said = rolling.map(({ ramp, people }, i) =>
    i === 0
      ? `${people} people lift at the toe${several ? ` of ${ramp}` : ''}`
      : `${people} at that of ${ramp}`,
  )
  const crowd = rolling.some(({ people }) => people > 2)
  return `To roll on wheels, ${said.join(', ')}${crowd ? '; fewer, or with no room for so many, lever it up and set the toe on a trolley' : ''}.`
}

/** What is put on for moving, with a picture of where. */
const fitBlocks = (
  book: Book,
  ramp: SolvedRamp,
  next: (said: string, width?: number) => FixedBlock,
): readonly Block[] => {
  const { stock, units, width } = book
  const own = stock.moving.find(({ ramp: name }) => name === ramp.name)
  const said = fitSteps(book, ramp)
  return own && isCurved(ramp)
    ? [
        named(
          'grips',
          stage(
            (ratio) => handleView(ramp, units, ratio, own),
            { width: ramp.length, height: ramp.transition.heights.frame },
            (room) => said.map((one) => next(one, room)),
            width,
          ),
        ),
      ]
    : said.map((one) => named('grips', next(one)))
}

/** How a side is gripped, and where. */
const gripStep = (
  { solved, show, units }: Book,
  ramp: SolvedRamp,
  { handle, bolt, grip, balance }: Moving,
  of: string,
): string => {
  if (!handle)
    return `Carry it by the lower edges of its sides${of}: no handle has room clear of edges and timbers.`
  const holds = solved.ramps.some(({ design: { storesInside } }) => storesInside?.ramp === ramp.name)
  const holes = gripHoles(handle, grip)
  const each = (of: (p: Point) => number): string => wordList([...new Set(holes.map((p) => show(of(p))))])
  const place = `its middle ${show(handle.x)} behind the toe and ${show(handle.y)} up, the holes ${each(({ x }) => x)} behind the toe, ${each(({ y }) => y)} up: there none meets a timber${handle.plated ? '. They pass the plate over the joint of the side too: look that none meets a screw of it' : ''}`
  const hangs =
    handle.y < balance.y ? '. Its weight lies higher: a hand on the upper edge keeps it upright' : ''
  return grip === 'rope'
    ? `Knot a loop of ${ownUnits(grips.rope, units)} rope through two holes of ${ownUnits(grips.ropeHole, units)} in each side${of}, ${place}${hangs}. Take it out before it is stored: nothing may stand out of these sides.`
    : `Bolt a handle on the outside of each side${of}, four bolts ${ownUnits(grips.bolt, units)} × ${show(bolt)} through holes of ${ownUnits(grips.boltHole, units)}, ${holds ? 'cup heads inside, so that the other ramp passes, washers and nuts outside' : 'washers and nuts inside'}, ${place}. A handle with other holes: mark its own, clear of every timber${ramp.splices.length > 0 ? `, ${show(boltRoom)} from the joint of the side and from the edges of its plate` : ''}${hangs}.`
}

/** A flat is long and low: one grip at each of its corners, its holes between two studs. */
const ropeStep = ({ show, stock, units }: Book, { name, studs, heights }: Flat, of: string): string => {
  // the first bay has the bolts of a plate over its joint
  const plated = stock.joints.some(({ flat }) => flat === name)
  const [first, second] = plated && studs.length > 4 ? studs.slice(1) : studs
  const bay = first && second ? second.at - first.at - (first.width + second.width) / 2 : 0
  const apart = Math.min(boltsFromMiddle.along, bay / 2 - boltRoom)
  const where =
    first && second && apart >= boltRoom
      ? `each through two holes, ${wordList([-1, 1].map((way) => show((first.at + second.at) / 2 + way * apart)))} from its end and ${show(heights.frame / 2)} up: there they meet no stud`
      : 'each through two holes where no stud lies behind'
  return `Knot four loops of ${ownUnits(grips.rope, units)} rope as grips, two on each side${of}, ${where.replace('two holes', `two holes of ${ownUnits(grips.ropeHole, units)}`)}. Take them out before anybody rides.`
}

/** What is put on for moving: grips, wheels. */
const fitSteps = (book: Book, ramp: SolvedRamp): readonly string[] => {
  const { stock, several, show, units, screw: size } = book
  const of = several ? ` of ${ramp.name}` : ''
  const own = stock.moving.find(({ ramp: name }) => name === ramp.name)
  const rolling = own?.rolling
  const [screw] = screwsOf(book, ramp, 'wheels')
  return [
    ...(own ? [gripStep(book, ramp, own, of)] : []),
    ...(isCurved(ramp) ? [] : [ropeStep(book, ramp, of)]),
    ...(rolling && screw
      ? [
          `Screw the ${rolling.count} wheels${of} by their plates into timber ${rolling.timber}, in the cut of the back bottom corner, ${rolling.across.map(show).join(', ')} from the left: ${screw.count / rolling.count} screws${screw.length === null ? '' : ` of ${size('wheels', screw.length)}, ${screwHead('wheels')},`} each, drilled ${ownUnits(pilotDrill, units)} before, ${ownUnits('10 mm (3/8 in)', units)} or more off the screws in its ends.`,
        ]
      : []),
  ]
}
