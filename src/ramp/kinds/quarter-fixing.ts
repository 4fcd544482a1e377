import type { QuarterDesign, Stock } from '../../design/design.ts'
import { runOutScrew } from '../beside/run-out-sheet.ts'
import { wallMiddles } from '../frame/bays.ts'
import { solvePipe } from '../frame/pipe.ts'
import { pipeAir } from '../frame/pipe-timber.ts'
import type { Driven } from '../screws/clearance.ts'
import { boardScrews, drivenAt, pipeScrews, skinScrews } from '../screws/driven.ts'
import { comesNear, screwDown } from '../screws/end-screws.ts'
import { screwDiameter } from '../screws/screw-sort.ts'
import { skinThickness } from '../side/skin-thickness.ts'
import { solveDeckBoard } from '../skin/deck-board.ts'
import { solveScrews } from '../skin/screws.ts'
import type { Crossed, Ground } from '../skin/skin-framing.ts'
import { planSkin } from '../skin/skin-plan.ts'
import type { Splice } from '../splice/splice.ts'
import type { QuarterFrame } from './quarter-frame.ts'

type Frame = NonNullable<QuarterFrame['frame']>
type Around = Ground & { readonly design: QuarterDesign }

/** All that is screwed to a frame: skin, pipe and deck board; and where the frame's own screws go so that they meet none of theirs. */
export const fixQuarter = (around: Around, stock: Stock, frame: Frame, splices: readonly Splice[]) => {
  const { design, units, studs } = around
  const { transition, coping, side, behind, skin, seams } = frame
  const timbers = [...studs, ...behind.timbers]
  const screwed = { design, units, spliced: splices.map(({ timber }) => timber) }
  const air = pipeAir({ design, coping, studs, deckTimbers: behind.timbers }, units)
  const { laid, ends } = screwDown(timbers, screwed, (crossed) => {
    const usual = solvePipe(design, stock, units)
    const inPipe = pipeScrews(coping, usual.pipe, air, units)
    const meets = inPipe.some((one) => crossed.timbers.some((i) => comesNear(timbers[i]!, one, one.thick)))
    const piped = meets ? solvePipe(design, stock, units, crossed.off) : usual
    const others = pipeScrews(coping, piped.pipe, air, units)
    const laid = planSkin(around, skin, seams, { crossed, others })
    const fixing = solveScrews(laid, around, units)
    const board = side
      ? solveDeckBoard(around, side, coping, transition.run, behind.timbers, crossed)
      : { board: null, findings: [] }
    const driven: readonly Driven[] = [
      ...skinScrews(transition.curve, fixing.skin, units),
      ...(side ? boardScrews(board.board, side.height, units) : []),
      ...others,
      ...runOutScrews(around, frame, crossed),
    ]
    return { laid, fixing, piped, board, driven }
  })
  return { ...laid, ends }
}

/** Where they stand across hangs on the panels to be had: in every end, unless they are told to keep off. */
const runOutScrews = (
  { design, units, studs }: Around,
  { transition }: Frame,
  { timbers }: Crossed,
): readonly Driven[] => {
  const screw = runOutScrew({ design, transition, studs, skinThickness: skinThickness(design) }, units)
  if (screw?.into !== 'stud' || screw.length === null || timbers.includes(0)) return []
  const { place, over, length } = screw
  return [
    drivenAt(transition.curve, place, over, length, wallMiddles(design), screwDiameter('run-out', units)),
  ]
}
