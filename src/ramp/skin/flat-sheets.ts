import type { Stand, Stud } from '../frame/stud.ts'
import { planSeams } from './seam-studs.ts'
import { solveSkin } from './skin.ts'
import type { Ground } from './skin-framing.ts'
import { type LaidLayer, planSkin } from './skin-plan.ts'

/** How the sheets of a flat lie: how far one of a sort reaches along it and across it, where they meet, and on what studs. */
export interface FlatSheets {
  readonly panelOf: Ground['panelOf']
  readonly studs: readonly Stud[]
  readonly skin: readonly LaidLayer[]
}

/**
 * Nothing is bent, so sheets may lie either way: the one of fewer sheets, then of fewer seams without a stud of their own, then
 * of fewer that run along, where no stud can lie under all of them; else their long sides along, over the studs.
 */
export const planFlat = (
  on: Omit<Ground, 'panelOf'>,
  stand: Stand,
  /** short side first */
  sizeOf: Ground['panelOf'],
  /** whether its sides come whole out of a panel */
  whole: boolean,
): FlatSheets => {
  const skinOn = (studs: readonly Stud[]) => solveSkin(on.design, on.curve, null, studs)
  const lay = (panelOf: Ground['panelOf']): FlatSheets => {
    const { studs, seams } = planSeams({ ...on, panelOf }, skinOn(on.studs), stand, whole)
    return { panelOf, studs, skin: planSkin({ ...on, panelOf, studs }, skinOn(studs), seams) }
  }
  const lengthwise: Ground['panelOf'] = (sheet) => {
    const [short, long] = sizeOf(sheet)
    return [long, short]
  }
  const [along, across] = [lay(lengthwise), lay(sizeOf)]
  const less =
    sheets(across) - sheets(along) || lost(across) - lost(along) || seamsAlong(across) - seamsAlong(along)
  return less < 0 ? across : along
}

const sum = ({ skin }: FlatSheets, of: (layer: LaidLayer) => number): number =>
  skin.reduce((total, layer) => total + of(layer), 0)

const sheets = (laid: FlatSheets): number => sum(laid, ({ pieces, widths }) => pieces.length * widths.length)

const lost = (laid: FlatSheets): number =>
  sum(laid, ({ seams }) => seams.filter(({ stud, shared }) => stud === null || shared).length)

const seamsAlong = (laid: FlatSheets): number => sum(laid, ({ acrossSeams }) => acrossSeams.length)
