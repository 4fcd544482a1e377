import type { Design } from '../design/design.ts'
import { degreesOf } from '../geometry/degrees.ts'
import type { Check } from './check/check.ts'
import { pipeEdges } from './frame/pipe-timber.ts'
import type { Flat, Quarter, Ramp, SolvedDesign } from './ramp.ts'
import { notchSizes } from './side/notch-sizes.ts'
import type { Layer } from './skin/layer.ts'
import { type OwnSheet, ownSheets } from './skin/own-sheets.ts'
import { stepBack } from './skin/skin.ts'

/** The figures of a design as scripts read them; mm and degrees. A key that is there keeps its name and its meaning. What could not be solved is null. */
export interface Figures {
  readonly title: string
  readonly units: string
  readonly ramps: readonly ReturnType<typeof rampFigures>[]
  readonly checks: readonly Check[]
}

export const designFigures = (design: Design, solved: SolvedDesign): Figures => ({
  title: design.title,
  units: design.units,
  ramps: solved.ramps.map(rampFigures),
  checks: solved.checks,
})

const rampFigures = (ramp: Ramp) => {
  switch (ramp.kind) {
    case 'quarter':
      return quarterFigures(ramp)
    case 'flat':
      return flatFigures(ramp)
    default:
      return ramp satisfies never
  }
}

const quarterFigures = (ramp: Quarter) => {
  const { transition, coping } = ramp
  return {
    name: ramp.name,
    kind: ramp.kind,
    length: ramp.length,
    deck: ramp.deck,
    width: ramp.width,
    heights: transition?.heights ?? null,
    transition: transition && {
      curve: transition.kind,
      radius: transition.radius,
      centre: [transition.centre.x, transition.centre.y],
      toeAngle: degreesOf(transition.toeAngle),
      lipAngle: degreesOf(transition.lipAngle),
      arc: transition.arc,
      run: transition.run,
      toeStep: transition.toeStep,
      bridge: transition.bridge,
    },
    coping: coping && {
      outside: coping.outside,
      centre: [coping.centre.x, coping.centre.y],
      up: coping.up,
      out: coping.out,
      notch: {
        seat: coping.seat,
        along: coping.along,
        down: coping.down,
        // as it is measured once the lip is sawn away
        ...(transition && ramp.length !== null
          ? notchSizes(transition, coping, ramp.length)
          : { back: null, bottom: null, floor: null }),
      },
      material: ramp.design.coping?.material,
      pipeLength: ramp.pipe?.length,
      pipePieces: ramp.pipe?.pieces,
      holes: ramp.pipe?.holes,
      screw: pipeScrew(ramp),
    },
    studs: studFigures(ramp),
    deckTimbers: ramp.deckTimbers.map((timber, i) => ({
      x: timber.x,
      y: timber.y,
      angle: degreesOf(timber.angle),
      lies: timber.lies,
      role: timber.role,
      width: timber.width,
      depth: timber.depth,
      endScrews: endFigures(ramp, ramp.studs.length + i),
    })),
    studLength: ramp.studLength,
    splices: spliceFigures(ramp),
    deckBoard: boardFigures(ramp),
    skin: skinFigures(ramp),
  }
}

/** The timber that the pipe's screws go into, numbered from 1 through studs and deck timbers, and how far behind its front face; null where it has none of its own. */
const pipeScrew = ({ coping, studs, deckTimbers }: Quarter) => {
  const at = deckTimbers.findIndex(({ role }) => role === 'pipe')
  return coping && at >= 0
    ? { timber: studs.length + at + 1, front: pipeEdges(coping, deckTimbers[at]!).front }
    : null
}

/** The same keys; what a flat has none of is null or empty. */
const flatFigures = (ramp: Flat) => ({
  name: ramp.name,
  kind: ramp.kind,
  length: ramp.length,
  deck: null,
  width: ramp.width,
  heights: { frame: ramp.heights.frame, deck: null, surface: ramp.heights.surface },
  transition: null,
  coping: null,
  studs: studFigures(ramp),
  deckTimbers: [],
  studLength: ramp.studLength,
  splices: spliceFigures(ramp),
  deckBoard: null,
  skin: skinFigures(ramp),
})

/** The two screws in each end of a timber: behind the toe and up, and on the end itself. */
const endFigures = ({ endScrews }: Ramp, timber: number) =>
  endScrews[timber]!.pair.map(({ at, along, down }) => ({ x: at.x, y: at.y, along, down }))

const studFigures = (ramp: Ramp) =>
  ramp.studs.map((stud, i) => ({
    at: stud.at,
    x: stud.x,
    y: stud.y,
    angle: degreesOf(stud.angle),
    lies: stud.lies,
    role: stud.role,
    width: stud.width,
    depth: stud.depth,
    endScrews: endFigures(ramp, i),
  }))

/** Timbers are numbered from 1 through studs and those behind the lip, as on paper. */
const spliceFigures = ({ splices }: Ramp) =>
  splices.map(({ timber, top, foot, plate }) => ({
    timber: timber + 1,
    top: [top.x, top.y],
    foot: [foot.x, foot.y],
    plate: plate.size,
  }))

const skinFigures = (ramp: Ramp) =>
  ramp.skin.map((layer, i) => ({
    layer: layer.layer,
    sheet: layer.sheet.material,
    thickness: layer.sheet.thickness,
    length: layer.length,
    // up its own middle, behind the normal through the toe corner
    start: i * stepBack(ramp.design),
    marks: layer.marks,
    ...layerFigures(layer),
  }))

/** Timbers are numbered from 1, as in `deckTimbers`. */
const boardFigures = ({ deckBoard: board }: Quarter) => {
  if (!board) return null
  const { sheet, ...rest } = board
  const number = (timber: number | null): number | null => (timber === null ? null : timber + 1)
  return {
    sheet: sheet.material,
    thickness: sheet.thickness,
    ...rest,
    seams: board.seams.map(({ at, timber }) => ({ at, timber: number(timber) })),
    rows: board.rows.map((row) => ({ ...row, timber: number(row.timber) })),
    sheets: ownSheets({ ...board, marks: [] }).map(sheetFigures),
  }
}

/** How a layer is laid: pieces up it and across it, where they meet, rows of screws. Studs are numbered from 1, toe to lip. */
const layerFigures = (layer: Layer) => {
  const { pieces, widths, seams, acrossSeams, rows, screws } = layer
  const number = (stud: number | null): number | null => (stud === null ? null : stud + 1)
  return {
    pieces,
    widths,
    seams: seams.map(({ at, stud, second }) => ({ at, stud: number(stud), second: number(second) })),
    acrossSeams,
    rows: rows.map((row) => ({
      at: row.at,
      on: row.on,
      stud: number(row.stud),
      across: row.across,
      length: row.length,
    })),
    sheets: ownSheets(layer).map(sheetFigures),
    screws,
  }
}

/** A sheet with what is drawn on it, from its own lower and left edges. */
const sheetFigures = ({
  up,
  across,
  marks,
  rows,
}: OwnSheet<{ readonly at: number; readonly across: readonly number[] }>) => ({
  size: [across.length, up.length],
  marks: marks.map(({ of, at }) => ({ stud: of + 1, at })),
  rows: rows.map((row) => ({ at: row.at, across: row.across })),
})
