import { thinWide } from '../design/section.ts'
import { countWords } from '../length/count-words.ts'
import { showThickness } from '../length/thickness.ts'
import { showLength, type Units } from '../length.ts'
import { liesWords, rippedWords } from '../ramp/frame/timber.ts'
import type { Flat } from '../ramp/ramp.ts'
import { type Row, sheetRows, spliceRows } from './framing-rows.ts'

/** A flat as a carpenter cuts and sets it. */
export const flatRows = (ramp: Flat, units: Units): readonly Row[] => {
  const { design, heights, length, width, studLength, studs } = ramp
  const show = (mm: number): string => showLength(mm, units)
  const fine = (mm: number): string => showLength(mm, units, { decimals: 1 })
  const { thickness, count } = design.sides
  const [thin, wide] = thinWide(design.studs.section)
  const bays = count - 1
  const rows: Row[] = [
    ['height', `frame ${show(heights.frame)}   ridden face ${show(heights.surface)}`],
    [
      'sides',
      `${count} of ${show(length)} × ${show(heights.frame)}, ${showThickness(thickness, units)} thick: straight cuts`,
    ],
    ['width', show(width)],
  ]
  const [stud] = studs
  if (stud) {
    const ripped = rippedWords(stud, design.studs.section, fine)
    rows.push(
      [
        'timber',
        `${fine(thin)} × ${fine(wide)}${ripped && `, ${ripped}`} between the sides, ${liesWords(stud)}, ${show(studLength)} long: ` +
          (bays === 1
            ? countWords(studs.length, 'stud')
            : `in each of ${bays} bays ${countWords(studs.length, 'stud')}, ${bays * studs.length} in all`),
      ],
      [
        `studs ${studs.length}`,
        `from one end to their middles: ${studs.map(({ at }) => show(at)).join(', ')}`,
      ],
    )
  }
  return [...rows, ...spliceRows(ramp, units), ...sheetRows(ramp, units)]
}
