import type { Units } from '../../design/design.ts'
import type { DraftStyle } from '../../drafting/line-types.ts'
import { type LaidTable, layTable, tableHeight, tableMarks } from '../../drafting/table.ts'
import { type Drawing, group } from '../../drawing/drawing.ts'
import { affineTranslate } from '../../geometry/affine.ts'
import type { Point } from '../../geometry/point.ts'
import { showLength } from '../../length.ts'
import type { Pattern } from '../../pattern/pattern.ts'
import type { Datum } from '../proof/datum.ts'
import { type SurveyLine, surveyLength } from '../proof/survey.ts'

interface ProofFacts {
  readonly units: Units
  readonly datums: readonly Datum[]
  readonly survey: readonly SurveyLine[]
  readonly pattern: Pick<Pattern, 'joints'>
}

/** Between the two tables, mm: side by side, and where the window is too narrow for that, one under the other. */
const apart = { across: 8, down: 2 } as const

/** Where the crosses lie on the panel, and what is measured on the taped paper and again on the wood; hung from 0,0. */
export const proofTables = (
  { units, datums, survey, pattern: { joints } }: ProofFacts,
  style: DraftStyle,
  width: number,
): { readonly draw: () => Drawing; readonly height: number } => {
  const show = (mm: number): string => showLength(mm, units)
  const crosses = layTable(
    {
      columns: [
        { head: "Cross, from\nthe panel's", kind: 'words', face: 'bold' },
        { head: 'front\nedge', kind: 'figure' },
        { head: 'bottom\nedge', kind: 'figure' },
        { head: 'their\ncorner', kind: 'figure' },
      ],
      rows: datums.map(({ letter, at }) => [
        letter,
        ...[at.x, at.y].map(show),
        isOnFirstPiece(joints, at) ? show(Math.hypot(at.x, at.y)) : '–',
      ]),
    },
    width / 2,
    style,
  )
  const checks = (room: number): LaidTable =>
    layTable(
      {
        columns: [
          { head: 'Check with a tape', kind: 'words' },
          { head: 'it must be', kind: 'right' },
          { head: 'paper', kind: 'box' },
          { head: 'wood', kind: 'box' },
        ],
        rows: survey.map((line) => [line.words, surveyLength(line, units), '', line.onWood ? '' : '–']),
      },
      room,
      style,
    )
  const left = datums.length === 0 ? 0 : crosses.width + apart.across
  const beside = checks(width - left)
  const fits = left === 0 || left + beside.width <= width + 0.001
  const second = fits ? beside : checks(width)
  const at = fits ? { x: left, y: 0 } : { x: 0, y: -tableHeight(crosses) - apart.down }
  return {
    draw: () => [
      ...(datums.length === 0 ? [] : tableMarks(crosses, { x: 0, y: 0 })),
      ...(survey.length === 0
        ? []
        : [group(affineTranslate(at.x, at.y), tableMarks(second, { x: 0, y: 0 }))]),
    ],
    height: Math.max(
      datums.length === 0 ? 0 : tableHeight(crosses),
      survey.length === 0 ? 0 : tableHeight(second) - at.y,
    ),
  }
}

/** Whether a place lies on the piece at the toe: the others have no corner of front and bottom edge. */
const isOnFirstPiece = (joints: Pattern['joints'], { x, y }: Point): boolean =>
  joints.every(([top, foot]) => x <= foot.x + ((top.x - foot.x) * (y - foot.y)) / (top.y - foot.y))
