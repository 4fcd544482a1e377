import type { Design } from '../design/design.ts'
import { showLength, type Units } from '../length.ts'
import type { Cover } from '../page/cover/cover.ts'
import type { CoverCounts } from '../page/cover/pattern-covers.ts'
import type { Quarter, Ramp, SolvedDesign } from '../ramp/ramp.ts'
import { steepnessWord } from '../ramp/steepness.ts'
import { flatRows } from './flat-table.ts'
import { framingRows } from './framing-table.ts'
import { showChecks } from './show-checks.ts'
import { wrap } from './wrap.ts'

/** Pages to tape for each way to cover the sides, and the one that `plot` takes unless told. */
export type PageFigures = CoverCounts & { readonly paper: string; readonly takes: Cover }

type Row = readonly [string, string]

const legend = { mm: 'lengths in mm', in: 'lengths in inches; + is 1/32 more, – is 1/32 less' } as const

/** The figures as a carpenter reads them: labels at the left, lengths in his units. */
export const figuresTable = (design: Design, solved: SolvedDesign, pages: PageFigures | null): string => {
  const several = solved.ramps.length > 1
  const checks = showChecks(solved.checks, several)
  return [
    `${design.title} (${legend[design.units]})`,
    ...solved.ramps.flatMap((ramp) => ['', ...rampTable(ramp, design.units)]),
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

const rampTable = (ramp: Ramp, units: Units): readonly string[] => {
  const rows = ramp.kind === 'flat' ? flatRows(ramp, units) : quarterRows(ramp, units)
  return [ramp.name, ...rows.map(([label, words]) => wrap(`  ${label.padEnd(8)} ${words}`, 11))]
}

const quarterRows = (ramp: Quarter, units: Units): readonly Row[] => {
  const show = (mm: number): string => showLength(mm, units)
  const { transition, length, deck } = ramp
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
      [
        'curve',
        `${show(transition.arc)} along it, ${show(transition.run)} along the floor; ${angle(transition.lipAngle)} at the lip, ${steepnessWord(transition.lipAngle)}`,
      ],
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
  rows.push(['width', show(ramp.width)], ...framingRows(ramp, units))
  return rows
}
