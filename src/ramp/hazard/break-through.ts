import type { QuarterDesign, RampDesign, Sheet, Units } from '../../design/design.ts'
import { wordList } from '../../length/word-list.ts'
import { type Draft, type Trial, warn } from '../check/check.ts'
import { measured, offerSteps, rounded, sheetsText } from '../check/offer.ts'
import { soldPlywood } from '../check/practice.ts'
import { boardKey, deckKey, downKey, everyKey, firstThat, type Key, orWays } from '../check/remedy.ts'
import { sheetList } from '../check/sheet-words.ts'
import { offering, set, type Told, tell, told } from '../check/told.ts'
import { studLength } from '../frame/bays.ts'
import type { DeckTimber } from '../frame/deck-timbers.ts'
import { borneWords, heldWords, spanLoad } from '../frame/span.ts'
import type { Stud } from '../frame/stud.ts'
import { type Borne, borneSkin, type Weak, weakest } from './bearing.ts'
import { spot } from './strength.ts'

/** What the sheets do there under the load. */
export const loadWords = ({ bears, deflection }: Weak, units: Units): string =>
  `${bears < spanLoad ? `bears about ${borneWords(bears)} there` : `sags about ${measured(deflection, units)} there`}, ` +
  `a rider who lands is taken as ${heldWords(spanLoad)} on a spot of ${spot} mm (2 in); strengths are assumed, ask who knows timber: `

/** The thinnest layer of plywood on the studs that helps. */
const layerWay = (trial: Trial, design: QuarterDesign, units: Units): Told | null => {
  const skinWith = (thickness: number): readonly Sheet[] => [
    { thickness, material: 'plywood' },
    ...design.skin,
  ]
  const thickness = soldPlywood[units].find((t) => trial({ ...design, skin: skinWith(t) }, ['skin-bend']))
  return thickness === undefined
    ? null
    : offering(
        `one more layer of ${rounded(thickness, units)} plywood`,
        set('skin', sheetsText(skinWith(thickness), units)),
      )
}

/** What a builder adds where no timber fits. */
const blocksWords = (lies: string): string =>
  `set a block between the sides there, of the studs' timber ripped to the room, as long as a stud, glued and screwed through the sides like one: ${lies} (an addition of your own: no list has it)`

/** Skin that may break between two of its studs. `key`: how far apart those of such a ramp stand; `thicker`: a skin that helps too. */
export const betweenStuds = <D extends RampDesign>(
  design: D,
  between: Weak,
  key: Key<D>,
  thicker: (trial: Trial<D>) => Told | null,
  units: Units,
): Draft<D> =>
  warn('skin-load', (trial: Trial<D>) => {
    const { every } = design.studs
    const closer = firstThat(trial, design, key, every - offerSteps[units] / 2, -1, units)
    return tell(
      `the skin (${sheetList(design.skin, units)}) spans ${measured(between.to - between.from, units)} from stud to stud and ${loadWords(between, units)}`,
      orWays(
        [closer && told`studs every ${closer}`, thicker(trial)],
        'neither closer studs nor one more layer was found to do alone: take both',
      ),
    )
  })

/** The skin's stretch along the curve, and the ends of which it is said already that no stud holds them. */
interface Along {
  readonly from: number
  readonly to: number
  readonly curveEnd: number
  readonly known: { readonly toe: boolean; readonly lip: boolean }
}

/** Skin that may break between its studs, or where it hangs free of the first and the last. */
export const skinLoadFindings = (
  design: QuarterDesign,
  studs: readonly Stud[],
  along: Along,
  units: Units,
): readonly Draft[] => {
  const { from, to, curveEnd, known } = along
  const { between, free: all } = weakest(borneSkin(design, studs, along))
  const free = all.filter((end) => !(end.from === from ? known.toe : known.lip))
  const show = (mm: number): string => measured(mm, units)
  const findings: Draft[] = []
  if (between)
    findings.push(betweenStuds(design, between, everyKey, (trial) => layerWay(trial, design, units), units))
  if (free.length > 0)
    findings.push(
      warn('skin-free', (trial: Trial) => {
        const ends = free.map(({ from: start, to: end }) =>
          start === from
            ? `${show(end - start)} from the toe up`
            : `${show(end - start)} below the upper end of the skin${to - curveEnd > 1 ? ` (${show(to - curveEnd)} of it over the notch)` : ''}`,
        )
        const by = design.coping?.by
        const shallower = by?.kind === 'notch' ? firstThat(trial, design, downKey, by.down, -1, units) : null
        return tell(
          `no timber holds the skin (${sheetList(design.skin, units)}) for ${wordList(ends)}: it ${loadWords(free[0]!, units)}`,
          orWays(
            [layerWay(trial, design, units), shallower && told`a notch ${shallower} down or less`],
            blocksWords("its face follows the sides' curve, as near to the free end as the sides reach"),
          ),
        )
      }),
    )
  return findings
}

/** A deck board that may break between its timbers, or beyond them. */
export const boardLoadFindings = (
  design: QuarterDesign,
  deckTimbers: readonly DeckTimber[],
  board: { readonly from: number; readonly to: number },
  units: Units,
): readonly Draft[] => {
  const sheet = design.deckBoard
  if (!sheet) return []
  const timbers = deckTimbers
    .filter(({ role }) => role === 'deck' || role === 'backing')
    .map(({ x, width }) => ({ from: x - width / 2, to: x + width / 2 }))
    .sort((a, b) => a.from - b.from)
  const borne: Borne = { sheets: [sheet], ...board, timbers, width: studLength(design) }
  const { between, free } = weakest(borne)
  const show = (mm: number): string => measured(mm, units)
  const said = `the deck board (${sheetList([sheet], units)})`
  const thicker = (trial: Trial): Told | null => {
    const level: Trial = (changed) => trial(changed, ['lip-ledge'])
    const thickerBy = (works: Trial) => firstThat(works, design, boardKey, sheet.thickness, 1, units)
    const found = thickerBy(level) ?? thickerBy(trial)
    return found && told`a deck board ${found} thick`
  }
  const findings: Draft[] = []
  if (between)
    findings.push(
      warn('board-load', (trial: Trial) => {
        const { deck } = design.studs
        const closer = firstThat(trial, design, deckKey, deck - offerSteps[units] / 2, -1, units)
        return tell(
          `${said} spans ${show(between.to - between.from)} from timber to timber and ${loadWords(between, units)}`,
          orWays(
            [closer && told`timbers every ${closer} (studs: { deck })`, thicker(trial)],
            'neither closer timbers nor a thicker deck board was found to do alone: take both',
          ),
        )
      }),
    )
  if (free.length > 0)
    findings.push(
      warn('board-free', (trial: Trial) => {
        const ends = free.map(
          ({ from, to }) => `${show(to - from)} at its ${from === board.from ? 'front' : 'back'}`,
        )
        return tell(
          `no timber holds ${said} for ${wordList(ends)}: it ${loadWords(free[0]!, units)}`,
          orWays(
            [thicker(trial)],
            blocksWords(
              "its face is level with the sides' upper edge, as near to the free end as the sides reach",
            ),
          ),
        )
      }),
    )
  return findings
}
