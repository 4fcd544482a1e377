import type { Point } from '../../geometry/point.ts'
import { type PanelPiece, pieceCorners, type SheetPanels } from './panels.ts'

const pair = ({ x, y }: Point): readonly [number, number] => [x, y]

const pieceFigures = (piece: PanelPiece) => ({
  mark: piece.part.mark,
  under: piece.under?.mark ?? null,
  ramp: piece.part.ramp,
  part: piece.part.part,
  what: piece.part.words,
  of: piece.part.piece?.of ?? null,
  x: piece.x,
  y: piece.y,
  second: piece.second && pair(piece.second),
  turn: piece.turn,
  over: piece.over,
  outline: pieceCorners(piece).map(pair),
})

/** Every panel with its pieces as scripts read it: mm and degrees; steps in the order of sawing. */
export const panelFigures = (sheets: readonly SheetPanels[]) =>
  sheets.flatMap(({ panels, usual }) =>
    panels.map(({ number, sheet, size, there, clamped, pieces, steps, rest }) => ({
      panel: number,
      sheet: sheet.material,
      thickness: sheet.thickness,
      size,
      usual,
      there,
      clamped,
      pieces: pieces.map(pieceFigures),
      cuts: steps,
      left: rest && { x: rest.x0, y: rest.y0, size: [rest.x1 - rest.x0, rest.y1 - rest.y0] },
    })),
  )
