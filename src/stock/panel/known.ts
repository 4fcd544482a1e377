import type { Ways } from './pack.ts'
import type { PairFit } from './pair.ts'

/** What layouts found of pieces and couples, each by its name: who lays much the same pieces again and again hands it on. */
export interface Known {
  readonly ways: Map<string, (kerf: number) => Ways>
  /** whether two go on one panel */
  readonly couples: Map<string, boolean>
  /** the least strip for two */
  readonly fits: Map<string, PairFit | null>
}

export const nothingKnown = (): Known => ({ ways: new Map(), couples: new Map(), fits: new Map() })
