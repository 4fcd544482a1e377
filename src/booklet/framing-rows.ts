import { kindTraits } from '../design/kind-traits.ts'
import { thinWide } from '../design/section.ts'
import { countWords } from '../length/count-words.ts'
import { showThickness } from '../length/thickness.ts'
import { wordList } from '../length/word-list.ts'
import { showLength, type Units } from '../length.ts'
import { revealWords } from '../ramp/check/reveal-words.ts'
import { sheetWords } from '../ramp/check/sheet-words.ts'
import { roleWords } from '../ramp/frame/deck-timbers.ts'
import { pipeDrills } from '../ramp/frame/pipe.ts'
import type { Stretch } from '../ramp/frame/stretch.ts'
import { rippedWords } from '../ramp/frame/timber.ts'
import type { Quarter, Ramp } from '../ramp/ramp.ts'
import { screwApart, studEnd } from '../ramp/skin/screw-rows.ts'
import { seamWords } from '../ramp/skin/seam-studs.ts'
import type { AcrossSeam } from '../ramp/skin/seams.ts'
import { stepBack } from '../ramp/skin/skin.ts'
import { practice } from '../ramp/skin/skin-framing.ts'
import { plateScrews } from '../ramp/splice/plate-screws.ts'
import { piecesOf } from '../ramp/splice/splice.ts'
import { spliceWords } from '../ramp/splice/splice-words.ts'
import { seamScrews } from '../stock/screws.ts'
import { timberPartsOf } from '../stock/timber-parts.ts'
import { screwWords } from './screw-counts.ts'

export type Row = readonly [label: string, words: string]

/** Timbers, pipe, skin and deck board as a carpenter cuts and sets them. Tenths of a mm only where they matter. */
export const framingRows = (ramp: Quarter, units: Units): readonly Row[] => [
  ...timberRows(ramp, units),
  ...spliceRows(ramp, units),
  ...pipeRows(ramp, units),
  ...sheetRows(ramp, units),
]

const lengthsOf = (units: Units) => ({
  show: (mm: number): string => showLength(mm, units),
  fine: (mm: number): string => showLength(mm, units, { decimals: 1 }),
})

const timberRows = (ramp: Quarter, units: Units): readonly Row[] => {
  const { show, fine } = lengthsOf(units)
  const { studs, deckTimbers, design } = ramp
  const [thin, wide] = thinWide(design.studs.section)
  const cut = `${fine(thin)} × ${fine(wide)} between the sides, ${show(ramp.studLength)} long`
  if (studs.length === 0) return ramp.studLength > 0 ? [['timber', cut]] : []
  const bays = design.sides.count - 1
  const each = `${countWords(studs.length, 'stud')}${deckTimbers.length > 0 ? ` and ${deckTimbers.length} behind the lip` : ''}`
  const all = bays * (studs.length + deckTimbers.length)
  // numbered on the paper behind the studs, in the order in which they were placed
  const numbered = deckTimbers.map((timber, i) => ({ timber, number: studs.length + i + 1 }))
  const places = (['pipe', 'backing', 'deck', 'back', 'wheels'] as const).flatMap((role) => {
    const own = numbered.filter(({ timber }) => timber.role === role)
    return own.length === 0
      ? []
      : [
          `${roleWords(role, ramp)} ${own.map(({ timber: { x, lies }, number }) => `${show(x)}${lies === 'flat' ? ' flat' : ''} (${number})`).join(', ')}`,
        ]
  })
  return [
    ['timber', `${cut}: ${bays === 1 ? each : `in each of ${bays} bays ${each}, ${all} in all`}`],
    [
      `studs ${studs.length}`,
      `up the curve from the toe to their middles: ${studs
        .map((stud) => {
          const ripped = rippedWords(stud, design.studs.section, fine)
          return stud.lies === 'edge' ? show(stud.at) : `${show(stud.at)} flat${ripped && ` (${ripped})`}`
        })
        .join(', ')}`,
    ],
    ...(places.length > 0
      ? [
          [
            `behind ${deckTimbers.length}`,
            `along the floor from the toe to their middles, upright unless flat (number on the paper): ${places.join('; ')}`,
          ] as const,
        ]
      : []),
  ]
}

/** The pieces of sides that no panel holds whole. */
export const spliceRows = (ramp: Ramp, units: Units): readonly Row[] => {
  const { splices, design } = ramp
  const [first] = splices
  if (!first) return []
  const { fine } = lengthsOf(units)
  const { thickness } = design.sides
  const { count, length } = plateScrews(first, thickness, units)
  return [
    [
      'pieces',
      `each side of ${splices.length + 1}, ${piecesOf(ramp).join(', ')} from the ${kindTraits[design.kind].sheetEnd}: ${spliceWords(splices, ramp.studs.length, units)}; ` +
        `plates ${showThickness(thickness, units)} plywood, glued, each with ${countWords(count, 'screw')}${length === null ? '' : ` of ${fine(length)}`}; ` +
        `the timbers there ${showThickness(thickness, units)} shorter at each plate`,
    ],
  ]
}

const pipeRows = ({ design, coping, pipe, deckBoard }: Quarter, units: Units): readonly Row[] => {
  const { show, fine } = lengthsOf(units)
  if (!coping)
    return design.coping === null
      ? [['pipe', `none: ${deckBoard ? 'the deck board ends at the lip, and ' : ''}no notch is cut`]]
      : []
  return [
    ['pipe', `${fine(coping.outside)} thick; stands ${revealWords(coping, design, fine)}`],
    ['notch', `${coping.seat}, ${fine(coping.along)} along, ${fine(coping.down)} down`],
    ...(pipe
      ? [
          [
            `holes ${pipe.holes.length}`,
            `${pipe.holes.map(show).join(', ')} along the ${show(pipe.length)} pipe; ${pipeDrills.near} in the near wall only, ${pipeDrills.far} in the far`,
          ] as const,
        ]
      : []),
  ]
}

/** Skin and deck board, sheet by sheet, with all their screws, those into blocks too, as they are bought. */
export const sheetRows = (ramp: Ramp, units: Units): readonly Row[] => {
  const { skin, studs } = ramp
  const { deckBoard } = ramp
  const { way } = kindTraits[ramp.design.kind]
  const { show, fine } = lengthsOf(units)
  const { gap, edge, base, top } = practice[units]
  const back = stepBack(ramp.design)
  const timbers = timberPartsOf([ramp])
  const rows: Row[] = skin.map((layer, i) => {
    const { pieces, widths, seams, acrossSeams } = layer
    const meets = seams.map((seam) => `${show(seam.at)}${seam.stud === null ? '' : ` on ${seamWords(seam)}`}`)
    return [
      `skin ${layer.layer}`,
      `${sheetWords(layer.sheet, units)}, ${show(layer.length)} long${i * back > 0 ? ` from ${show(i * back)} up` : ''}; ` +
        `${sheets(pieces, way, meets, widths, acrossSeams, show)}, ${screwWords(layer.rows, show, seamScrews(timbers, layer, 'skin'))}`,
    ]
  })
  if (deckBoard) {
    const { sheet, from, length, pieces, widths, seams, acrossSeams } = deckBoard
    const meets = seams.map(({ at }) => `${show(from + at)} behind the toe`)
    rows.push([
      'board',
      `${sheetWords(sheet, units)}, ${show(length)} deep, from ${show(from)} behind the toe to the back; ` +
        `${sheets(pieces, 'front to back', meets, widths, acrossSeams, show)}, ${screwWords(deckBoard.rows, show, seamScrews(timbers, deckBoard, 'deck board'))}`,
    ])
  }
  const several = skin.length > 1
  if (studs.length > 0 && rows.length > 0)
    rows.push([
      'screws',
      `${show(base)} apart at most${several ? ` (top sheet ${show(top)})` : ''}, ${fine(edge)} off a sheet's edge, ${show(studEnd)} off a stud's end${several ? ', ' : '; '}` +
        `${several ? `${show(screwApart)} off any below; ` : ''}gaps ${fine(gap)}`,
    ])
  return rows
}

/** How many sheets each way, what they measure up the ramp, and where they meet. */
const sheets = (
  pieces: readonly Stretch[],
  way: string,
  meets: readonly string[],
  widths: readonly Stretch[],
  across: readonly AcrossSeam[],
  show: (mm: number) => string,
): string => {
  if (pieces.length <= 1 && widths.length <= 1) return '1 sheet'
  return [
    ...(pieces.length > 1
      ? [
          `${pieces.length} sheets ${way} (${pieces.map(({ length }) => show(length)).join(' and ')}, seam ${meets.join(', ')})`,
        ]
      : []),
    ...(widths.length > 1
      ? [
          `${widths.length} ${pieces.length > 1 ? '' : 'sheets '}across (seam ${wordList(across.map(({ at }) => show(at)))})`,
        ]
      : []),
  ].join(' × ')
}
