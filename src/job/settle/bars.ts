import type { Asks } from '../../design/asks.ts'
import type { Design, QuarterDesign } from '../../design/design.ts'
import { shownOffer } from '../../ramp/check/offer.ts'
import type { Key } from '../../ramp/check/remedy.ts'
import {
  isTimberShort,
  type LimitName,
  type Measures,
  passed,
  quickMeasures,
  slowMeasures,
  soundRamp,
} from './judge.ts'
import { toeRank } from './toe-rank.ts'

/** What keeps a figure from a better value; `edge`: a lower toe is a thin edge. */
export type Bind = LimitName | 'timber' | 'ramp' | 'edge'

/** The next value that would be better, where no angle is asked for. */
export const betterOf = ({ figure }: Asks, mm: number, step: number): number =>
  figure === 'toe' ? mm - step : figure === 'tangent' ? mm - Math.sign(mm) * step : mm + step

const within = ({ range }: Key, mm: number): boolean => mm >= range.least - 1e-9 && mm <= range.most + 1e-9

/** What the next better value would pass. */
export const bindsOf = (
  design: Design,
  asks: Asks,
  key: Key,
  ramp: QuarterDesign,
  better: number,
  mm: number,
): readonly Bind[] => {
  if (better === mm || !within(key, better)) return []
  if (asks.figure === 'toe' && toeRank(better, design.units) > toeRank(mm, design.units)) return ['edge']
  const changed = key.typed(ramp, better)
  const quick = quickMeasures(changed, design)
  const sound = quick && soundRamp(changed, design)
  if (!quick || !sound) return [quick && isTimberShort(changed, design) ? 'timber' : 'ramp']
  return passed({ ...quick, ...slowMeasures(sound, design, asks.limits) }, asks.limits).map(([name]) => name)
}

/** A lip this near to the angle is shown as that, degrees. */
const shownSame = 0.05

/** Where values nearer to an angle lie: a lip is steeper on a higher ramp, and on a smaller radius or tangent. */
export const nearerSide = ({ figure, lip: wanted }: Asks, lip: number): 1 | -1 =>
  lip < wanted! === (figure === 'height') ? 1 : -1

/** What bars the next value nearer to an angle; null where it is met as near as steps go. */
export const barsOf = (
  design: Design,
  asks: Asks,
  key: Key,
  { ramp, mm, quick }: { readonly ramp: QuarterDesign; readonly mm: number; readonly quick: Measures },
  step: number,
): { readonly binds: readonly Bind[]; readonly missed: string } | null => {
  const off = (lip: number): number => Math.abs(lip - asks.lip!)
  if (off(quick.lip!) < shownSame) return null
  const nearer = mm + nearerSide(asks, quick.lip!) * step
  const lip = within(key, nearer) ? quickMeasures(key.typed(ramp, nearer), design)?.lip : undefined
  if (lip !== undefined && off(lip) >= off(quick.lip!)) return null
  const binds = bindsOf(design, asks, key, ramp, nearer, mm)
  return binds.length === 0 && within(key, nearer)
    ? null
    : { binds, missed: shownOffer(Math.round(nearer / step), design.units) }
}
