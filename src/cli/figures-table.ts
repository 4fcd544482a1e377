import type { Design } from '../design/design.ts'
import { showLength } from '../length.ts'
import type { Cover } from '../page/coverage.ts'
import type { CoverCounts } from '../page/pattern-covers.ts'
import { pipeDrills } from '../ramp/holes.ts'
import type { Ramp, SolvedDesign } from '../ramp/ramp.ts'
import { steepnessWord } from '../ramp/steepness.ts'
import { showChecks } from './show-checks.ts'
import { wrap } from './wrap.ts'

/** Pages to tape for each way to cover the sides, and the one that `plot` takes unless told. */
export type PageFigures = CoverCounts & { readonly paper: string; readonly takes: Cover }

type Row = readonly [string, string]

const legend = { mm: 'lengths in mm', in: 'lengths in inches; + is 1/32 more, – is 1/32 less' } as const

/** The figures as a carpenter reads them: labels at the left, lengths in his units. */
export const figuresTable = (design: Design, solved: SolvedDesign, pages: PageFigures | null): string => {
  const show = (mm: number): string => showLength(mm, design.units)
  const several = solved.ramps.length > 1
  const checks = showChecks(solved.checks, several)
  return [
    `${design.title} (${legend[design.units]})`,
    ...solved.ramps.flatMap((ramp) => ['', ...rampTable(ramp, show)]),
    ...(pages
      ? [
          '',
          `pages to tape on ${pages.paper}: whole ${pages.whole}, line ${pages.line}, ribbon ${pages.ribbon}; plot takes ${pages.takes}`,
        ]
      : []),
    ...(checks.length > 0 ? ['', ...checks] : []),
    '',
  ].join('\n')
}

const rampTable = (ramp: Ramp, show: (mm: number) => string): readonly string[] => {
  const { transition, coping, length, deck } = ramp
  const angle = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(1)}°`
  const rows: Row[] = []
  if (transition) {
    const { heights, radius } = transition
    rows.push(
      [
        'height',
        `frame ${show(heights.frame)}   deck ${show(heights.deck)}   ridden face at the lip ${show(heights.surface)}`,
      ],
      ['radius', `frame ${show(radius.frame)}   ridden face ${show(radius.surface)}`],
      ['lip', `${angle(transition.lipAngle)}, ${steepnessWord(transition.lipAngle)}`],
      ['curve', `${show(transition.arc)} along it, ${show(transition.run)} along the floor`],
      [
        'toe',
        `${show(transition.toe.y)} high, ${angle(transition.toeAngle)}; ridden face ${show(transition.toeStep)} above the floor there`,
      ],
    )
  }
  if (length !== null && deck !== null && transition)
    rows.push([
      'side',
      `${show(length)} long, ${show(transition.heights.frame)} high; deck ${show(deck)} behind the lip`,
    ])
  rows.push(['width', `${show(ramp.width)}, studs ${show(ramp.studLength)} long`])
  if (coping)
    rows.push(
      [
        'pipe',
        `${show(coping.outside)} thick; stands ${show(coping.up)} above the deck board, ${show(coping.out)} out of the ridden face`,
      ],
      ['notch', `${coping.seat}, ${show(coping.along)} along, ${show(coping.down)} down`],
    )
  if (coping && ramp.pipe)
    rows.push([
      `holes ${ramp.pipe.holes.length}`,
      `${ramp.pipe.holes.map(show).join(', ')} along the pipe of ${show(ramp.pipe.length)}; ${pipeDrills.near} in its near wall only, ${pipeDrills.far} in the far`,
    ])
  ramp.skin.forEach((layer, i) => {
    rows.push([
      `skin ${layer.layer}`,
      `${show(layer.sheet.thickness)} ${layer.sheet.material}, cut ${show(layer.length)} long; ${laid(ramp, i, show)}`,
    ])
  })
  if (ramp.studs.length > 0)
    rows.push([
      `studs ${ramp.studs.length}`,
      `up the curve to their middles: ${ramp.studs.map((s) => `${show(s.at)}${s.lies === 'flat' ? ' flat' : ''}`).join(', ')}`,
    ])
  return [ramp.name, ...rows.map(([label, words]) => wrap(`  ${label.padEnd(8)} ${words}`, 11))]
}

/** Sheets, seams and screws of a layer. */
const laid = ({ plans, screws }: Ramp, i: number, show: (mm: number) => string): string => {
  const { pieces, widths, seams } = plans[i]!
  const { count, length } = screws[i]!
  const sheets = pieces.length * widths.length
  const meets = seams.map(({ at, stud }) => `${show(at)}${stud === null ? '' : ` (stud ${stud + 1})`}`)
  return [
    sheets === 1 ? '1 sheet' : `${sheets} sheets`,
    ...(meets.length > 0 ? [`seam at ${meets.join(', ')}`] : []),
    `${count} screws${length === null ? '' : ` ${show(length)} long`}`,
  ].join(', ')
}
