import { sidePicture } from '../../booklet/views/side-picture.ts'
import type { Design } from '../../design/design.ts'
import { chooseCover } from '../../page/cover/choose-cover.ts'
import { coverCounts, designCovers } from '../../page/cover/pattern-covers.ts'
import { defaultMargins, defaultOverlap, paperOf } from '../../page/sheet/paper.ts'
import { noCorrection } from '../../printer/correction.ts'
import { designFigures, type Figures } from '../../ramp/figures.ts'
import { quartersOf, type WholeDesign } from '../../ramp/ramp.ts'
import { solveDesign } from '../../ramp/solve.ts'
import { asCuts, readAsCut, showAsCut } from '../as-cut.ts'
import { command, type Given } from '../command.ts'
import { figuresTable, type PageFigures } from '../figures-table.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, jsonOption } from '../options.ts'
import { checkPicture, pictureRoom, writePicture } from '../picture.ts'
import { screwCounts } from '../screw-counts.ts'
import type { Shell } from '../shell.ts'

const rows = [
  {
    name: 'as-cut',
    takes: 'notch',
    many: 'each',
    help: '`along=…,down=…` of a notch that is cut already (`RAMP:along=…` where there are several): what the pipe does in it, and the shim that cures it',
  },
  jsonOption,
  { name: 'out', takes: 'file', help: 'write it to a file instead' },
  {
    name: 'picture',
    takes: 'file',
    help: 'also draw the ramp from the side with its dimensions, to scale: a `.png`, `.svg` or `.pdf` file',
  },
  forceOption,
] as const

export const figuresCommand = command({
  name: 'figures',
  help: 'show what the ramp comes out as, and what will not work',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], options, shell) => figures(file, options, shell),
})

/** What the ramp comes out as, and what will not work. Exit 1 when something stops it. */
const figures = async (file: string, options: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design } = loadDesign(file)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  if (options.picture !== undefined) checkPicture(options.picture, options.force ?? false, file)
  const cuts = readAsCut(options.asCut ?? [], design)
  const solved = solveDesign(design)
  const cut = asCuts(cuts, solved)
  const plotted = !solved.stopped && quartersOf(solved.ramps).length > 0
  const pages = plotted ? pagesOf(design, solved) : null
  const text = options.json
    ? `${JSON.stringify({ ...withScrewLengths(designFigures(design, solved)), ...(cuts.length > 0 && { asCut: cut }), pages }, null, 2)}\n`
    : figuresTable(design, solved, pages) +
      showAsCut(cut, solved, design.units)
        .map((line) => `${line}\n`)
        .join('')
  if (options.out === undefined) shell.out(text)
  else writeOut(options.out, text, options.force ?? false)
  if (options.picture !== undefined) {
    const picture = sidePicture(design, solved, pictureRoom(design.paper))
    if (picture)
      await writePicture(picture, design.title, design.paper, options.picture, options.force ?? false)
    else shell.err(`${options.picture}: not drawn, since no ramp is solved\n`)
  }
  return solved.stopped ? 1 : 0
}

/** Layers and deck board with their screws counted by length: some take shorter ones than the layer's own. */
const withScrewLengths = (figures: Figures) => ({
  ...figures,
  ramps: figures.ramps.map((ramp) => ({
    ...ramp,
    deckBoard: ramp.deckBoard && counted(ramp.deckBoard),
    skin: ramp.skin.map(counted),
  })),
})

const counted = <
  T extends {
    readonly rows: Parameters<typeof screwCounts>[0]
    readonly screws: { readonly count: number; readonly length: number | null }
  },
>(
  layer: T,
) => ({ ...layer, screws: { ...layer.screws, lengths: screwCounts(layer.rows) } })

/** What each way to cover all sides would take on the design's own paper. */
const pagesOf = (design: Design, solved: WholeDesign): PageFigures => {
  const sheet = {
    paper: paperOf(design.paper),
    margins: defaultMargins(design.paper),
    correction: noCorrection,
  }
  const counts = coverCounts(designCovers(design, solved, { sheet, overlap: defaultOverlap }))
  return { paper: design.paper, ...counts, takes: chooseCover(counts).cover }
}
