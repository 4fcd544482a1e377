import type { Design, Sheet } from '../design/design.ts'
import { isCurved } from '../design/kind-traits.ts'
import { largestPanel } from '../design/panel-sizes.ts'
import { type Path, rectangle } from '../geometry/path.ts'
import { runOutPieces } from '../ramp/beside/run-out-sheet.ts'
import { same } from '../ramp/check/offer.ts'
import type { Stretch } from '../ramp/frame/stretch.ts'
import type { Flat, Quarter, Ramp, SolvedDesign } from '../ramp/ramp.ts'
import { sideMarks } from '../ramp/side/side-marks.ts'
import type { SheetPart } from './sheet-part.ts'
import { sideParts } from './side-parts.ts'
import { type TimberPart, timberPartsOf } from './timber-parts.ts'

export interface Parts {
  readonly sheets: readonly SheetPart[]
  readonly timbers: readonly TimberPart[]
}

/** Everything that is sawn for a design, in the order of its ramps; what a stop leaves unsolved is not in it. */
export const partsOf = (design: Design, { ramps }: SolvedDesign): Parts => {
  const marks = sideMarks(ramps.map((ramp) => ramp.design))
  const sheets = ramps.flatMap((ramp, i) => [
    ...sideParts(ramp, marks[i]!),
    ...skinOf(ramp, design),
    ...boardOf(ramp),
    ...(isCurved(ramp) ? runOutOf(ramp, design) : []),
  ])
  return { sheets: numbered(sheets), timbers: timberPartsOf(ramps) }
}

/** Letters of the marks; sides have theirs already. */
const letters = { side: 'S', rib: 'S', skin: 'K', 'deck-board': 'D', 'run-out': 'R', plate: 'P' } as const

const numbered = (parts: readonly SheetPart[]): readonly SheetPart[] => {
  const last = new Map<string, number>()
  return parts.map((part) => {
    if (part.mark !== '') return part
    const letter = letters[part.part]
    const number = (last.get(letter) ?? 0) + 1
    last.set(letter, number)
    return { ...part, mark: `${letter}${number}` }
  })
}

const box = (width: number, height: number): Path => rectangle(0, 0, width, height)

/** Whether the material has a grain that must lie one way; what is not known is taken to have one. */
const hasGrain = ({ material }: Sheet): boolean => material === 'plywood' || material === 'other'

/** Up the ramp is y, across it x. Named by layer, and by their number from the toe and from the left where there are several. */
const skinOf = (ramp: Ramp, design: Design): readonly SheetPart[] =>
  ramp.skin.flatMap(({ layer, sheet, pieces, widths }) => {
    const grain = hasGrain(sheet) ? (isCurved(ramp) ? 'x' : flatGrain(ramp, design)) : null
    return gridOf(pieces, widths, isCurved(ramp) ? 'the toe' : 'one end').map(
      ({ up, across, words }): SheetPart => ({
        mark: '',
        ramp: ramp.name,
        part: 'skin',
        words: `layer ${layer}${words}`,
        sheet,
        outline: box(across, up),
        grain,
        piece: null,
        faced: false,
      }),
    )
  })

/** Sheets of a flat were laid one way; where they fit either way they may be sawn either way. */
const flatGrain = ({ skin }: Flat, { stock, units }: Design): 'x' | 'y' | null => {
  const over = (way: 'widths' | 'pieces'): boolean =>
    skin.some(({ sheet, [way]: all }) => {
      const [short] = largestPanel(sheet, stock, units)
      return all.some(({ length }: Stretch) => length > short + same)
    })
  if (over('widths')) return 'x'
  return over('pieces') ? 'y' : null
}

const gridOf = (pieces: readonly Stretch[], widths: readonly Stretch[], from: string) =>
  pieces.flatMap(({ length: up }, k) =>
    widths.map(({ length: across }, j) => ({
      up,
      across,
      words:
        (pieces.length > 1 ? `, piece ${k + 1} from ${from}` : '') +
        (widths.length > 1 ? `, ${j + 1} from the left` : ''),
    })),
  )

/** Its sheets lie with their long sides across the ramp. */
const boardOf = ({ name, deckBoard: board }: Ramp): readonly SheetPart[] =>
  board
    ? gridOf(board.pieces, board.widths, 'the lip').map(
        ({ up, across, words }): SheetPart => ({
          mark: '',
          ramp: name,
          part: 'deck-board',
          words: `deck board${words}`,
          sheet: board.sheet,
          outline: box(across, up),
          grain: hasGrain(board.sheet) ? 'x' : null,
          piece: null,
          faced: false,
        }),
      )
    : []

const runOutOf = (ramp: Quarter, { stock, units }: Design): readonly SheetPart[] => {
  const runOut = runOutPieces(ramp, stock, units)
  if (!runOut) return []
  const { sheet, length, widths } = runOut
  return widths.map((across, i) => ({
    mark: '',
    ramp: ramp.name,
    part: 'run-out' as const,
    words: `run-out sheet${widths.length > 1 ? `, ${i + 1} from the left` : ''}`,
    sheet,
    outline: box(across.length, length),
    grain: null,
    piece: null,
    faced: false,
  }))
}
