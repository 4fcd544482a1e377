import type { RampDesign, Sheet } from '../design/design.ts'

/** Sheet steel is not sawn, drilled, rounded or sealed as wood is. */
export const isSteel = ({ material }: Sheet): boolean => material === 'steel'

export type SteelUse = 'skin' | 'deck board' | 'run-out'

/** What of these ramps is sheet steel: sawn with a metal blade, drilled with a metal bit, its edges filed. */
export const steelUses = (ramps: readonly { readonly design: RampDesign }[]): readonly SteelUse[] => {
  const sheets = ramps.flatMap(
    ({ design: { skin, deckBoard, runOut } }): readonly (readonly [SteelUse, Sheet])[] => [
      ...skin.map((sheet) => ['skin', sheet] as const),
      ...(deckBoard ? [['deck board', deckBoard] as const] : []),
      ...(runOut?.kind === 'sheet' ? [['run-out', runOut.sheet] as const] : []),
    ],
  )
  return (['skin', 'deck board', 'run-out'] as const).filter((use) =>
    sheets.some(([of, sheet]) => of === use && isSteel(sheet)),
  )
}
