import type { QuarterDesign, Sheet } from '../../design/design.ts'
import { toldLength } from '../../length/show.ts'
import { type Finding, note } from '../check/check.ts'
import { measured, rounded, same } from '../check/offer.ts'
import type { DeckTimber } from '../frame/deck-timbers.ts'
import { screwLength, screwPoint, screwWithin } from '../frame/screw-lengths.ts'
import { type Stretch, stretches } from '../frame/stretch.ts'
import type { SolvedCoping } from '../side/coping.ts'
import type { Side } from '../side/side.ts'
import { offWall, screwsAcross } from './screw-rows.ts'
import { type AcrossSeam, acrossSeams } from './seams.ts'
import { skinGap } from './skin.ts'
import {
  type Crossed,
  type Framing,
  framingFor,
  type Ground,
  insideStud,
  noneCrossed,
  practice,
} from './skin-framing.ts'

/** A row of screws in the deck board, on one of the ramp's timbers behind the lip. */
export interface BoardRow {
  /** from the board's front edge */
  readonly at: number
  /** index of the timber */
  readonly timber: number
  /** screws, from the ramp's left outer face */
  readonly across: readonly number[]
  /** of a screw; null where no usual one is short enough */
  readonly length: number | null
}

/** The board behind the lip: its sheets lie with their long sides across the ramp. Lengths mm. */
export interface DeckBoard {
  readonly sheet: Sheet
  /** its front edge, behind the toe */
  readonly from: number
  /** front to back */
  readonly length: number
  /** from its front edge */
  readonly pieces: readonly Stretch[]
  readonly widths: readonly Stretch[]
  /** the middle of the gap, from its front edge, and the index of the timber under it; null where none lies in reach */
  readonly seams: readonly { readonly at: number; readonly timber: number | null }[]
  readonly acrossSeams: readonly AcrossSeam[]
  readonly rows: readonly BoardRow[]
  readonly screws: { readonly count: number; readonly length: number | null }
}

/** No piece is narrower from front to back, mm. */
const leastPiece = 100

interface Place {
  readonly i: number
  readonly at: number
  readonly timber: DeckTimber
}

/** Where the board begins behind the toe: at the lip, or clear of the pipe. */
export const boardFront = (coping: SolvedCoping | null, lip: number): number =>
  coping ? Math.max(lip, coping.centre.x + coping.outside / 2 + skinGap) : lip

export const solveDeckBoard = (
  ground: Ground & { readonly design: QuarterDesign },
  side: Side,
  coping: SolvedCoping | null,
  lip: number,
  timbers: readonly DeckTimber[],
  crossed: Crossed = noneCrossed,
): { readonly board: DeckBoard | null; readonly findings: readonly Finding[] } => {
  const { design, units } = ground
  const { gap, edge, base } = practice[units]
  const sheet = design.deckBoard
  const from = boardFront(coping, lip)
  const length = side.length - from
  if (!sheet || length <= same) return { board: null, findings: [] }
  const framing = framingFor(ground, sheet)
  const { panel } = framing
  const under = timbers.flatMap((timber, i): readonly Place[] =>
    timber.role === 'deck' || timber.role === 'backing' ? [{ i, at: timber.x - from, timber }] : [],
  )
  const seams = boardSeams(under, length, panel[0], gap, gap / 2 + edge + insideStud)
  const across = acrossSeams(design, panel[1], units, [])
  const widths = stretches(
    design.width,
    across.map(({ at }) => at),
    gap,
  )
  const known = new Map<number, readonly number[]>()
  const screwsOn = (timber: number): readonly number[] => {
    const keep = offWall(design, crossed, ground.studs.length + timber)
    const found = known.get(keep) ?? screwsAcross(framing, keep, widths, base, false, [])
    known.set(keep, found)
    return found
  }
  const usual = screwLength(sheet.thickness, units)
  const row = (at: number, { i, timber }: Place): BoardRow => {
    const wood = sheet.thickness + timber.depth
    const fits = usual !== null && usual <= wood - screwPoint + same
    return { at, timber: i, across: screwsOn(i), length: fits ? usual : screwWithin(wood, units) }
  }
  const rows = under.flatMap((place): readonly BoardRow[] => {
    const seam = seams.find(({ timber }) => timber === place.i)
    if (seam) return [-1, 1].map((way) => row(seam.at + way * (gap / 2 + edge), place))
    // from the board's edge as far as the figures of both say
    const told = toldLength(place.timber.x, units) - toldLength(from, units)
    const at = Math.max(edge, Math.min(told, length - edge))
    const off = seams.every((other) => Math.abs(other.at - at) >= gap / 2 + edge - same)
    return off && Math.abs(at - place.at) <= place.timber.width / 2 - insideStud ? [row(at, place)] : []
  })
  const count = rows.reduce((sum, { across: own }) => sum + own.length, 0)
  return {
    board: {
      sheet,
      from,
      length,
      pieces: stretches(
        length,
        seams.map(({ at }) => at),
        gap,
      ),
      widths,
      seams,
      acrossSeams: across,
      rows,
      screws: { count, length: count > 0 ? usual : null },
    },
    findings: [...seamFindings(framing, length, from, seams), ...thinFindings(rows, usual, framing, timbers)],
  }
}

/** The farthest timber that each sheet reaches and that two rows of screws find wood in; else as far as the sheet goes. */
const boardSeams = (
  under: readonly Place[],
  length: number,
  short: number,
  gap: number,
  half: number,
): DeckBoard['seams'] => {
  const seams: { readonly at: number; readonly timber: number | null }[] = []
  let start = 0
  while (length - start > short + same) {
    const reach = start + short + gap / 2
    // of panels narrower than the least piece as well
    const last = Math.max(length - leastPiece, start + short / 2)
    const found = under
      .filter(
        ({ at, timber }) =>
          timber.width / 2 >= half - same && at >= start + leastPiece && at <= Math.min(reach, last) + same,
      )
      .at(-1)
    const at = found?.at ?? Math.min(reach, last)
    seams.push({ at, timber: found?.i ?? null })
    start = at + gap / 2
  }
  return seams
}

const seamFindings = (
  { panel, units }: Framing,
  length: number,
  from: number,
  seams: DeckBoard['seams'],
): readonly Finding[] => {
  const bare = seams.filter(({ timber }) => timber === null)
  return [
    ...(bare.length > 0
      ? [
          note(
            'deck-seam',
            `the deck board is ${rounded(length, units)} from front to back, a sheet is ${measured(panel[0], units)} wide: sheets meet ` +
              `${bare.map(({ at }) => rounded(from + at, units)).join(', ')} behind the toe, where no timber takes two rows of screws; add one there, or double the one beside it`,
          ),
        ]
      : []),
  ]
}

/** How a note on the board's screws begins; those on the skin's have the same id. */
const boardNote = 'deck board: '

export const isOfBoard = ({ message }: Pick<Finding, 'message'>): boolean => message.startsWith(boardNote)

const thinFindings = (
  rows: readonly BoardRow[],
  usual: number | null,
  { units }: Framing,
  timbers: readonly DeckTimber[],
): readonly Finding[] => {
  const thin = rows.filter(({ length }) => usual !== null && length !== usual)
  if (usual === null || thin.length === 0) return []
  const words = [...new Map(thin.map((row) => [row.timber, row.length]))].map(
    ([i, length]) =>
      `the timber ${rounded(timbers[i]!.x, units)} behind the toe (${length === null ? 'no usual screw is short enough' : `${measured(length, units)} at most`})`,
  )
  return [
    note(
      'screw-through',
      `${boardNote}a screw of ${measured(usual, units)} comes through at ${words.join(' and at ')}`,
    ),
  ]
}
