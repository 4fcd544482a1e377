import type { Cover, LayingWords, SetPlan } from '../../index.ts'

/** How pages are laid: the words of a form, and the measured printer as its file has it. */
export interface Lay {
  readonly words: LayingWords
  readonly profile: string | null
}

/** What the page asks of its worker; it is answered in turn. */
export type Question =
  /** how many pages each cover takes, and where the pages of the chosen one lie */
  | { readonly kind: 'plan'; readonly text: string; readonly lay: Lay }
  /** one page as it will print */
  | { readonly kind: 'page'; readonly text: string; readonly lay: Lay; readonly page: number }
  | { readonly kind: 'set'; readonly text: string; readonly lay: Lay }
  | { readonly kind: 'square'; readonly units: 'mm' | 'in'; readonly lay: Lay }
  | {
      readonly kind: 'offsets' | 'cuts' | 'booklet' | 'list'
      readonly text: string
      readonly lay: Lay
    }
  /** what a file is that was dropped on the page: a set says its plan */
  | { readonly kind: 'open-set'; readonly bytes: Uint8Array }
  | {
      readonly kind: 'reprint'
      readonly bytes: Uint8Array
      readonly pages: readonly string[]
      readonly profile: string | null
    }
  /** what a printer does to this ramp, in words */
  | { readonly kind: 'effect'; readonly text: string; readonly profile: string }

export interface Saved {
  readonly name: string
  readonly type: string
  readonly bytes: Uint8Array
  readonly warnings: readonly string[]
}

export type Answer =
  | {
      readonly kind: 'plan'
      readonly counts: Readonly<Record<Cover, number>>
      readonly cover: Cover
      readonly why: string | null
      readonly plan: SetPlan
    }
  | { readonly kind: 'page'; readonly svg: string; readonly width: number; readonly height: number }
  | { readonly kind: 'file'; readonly file: Saved }
  | { readonly kind: 'open-set'; readonly plan: SetPlan; readonly design: string }
  | { readonly kind: 'effect'; readonly lines: readonly string[] }

/** From the worker: how far it is, then one answer or a refusal in words. */
export type Reply =
  | { readonly id: number; readonly page: number; readonly of: number }
  | { readonly id: number; readonly answer: Answer }
  | { readonly id: number; readonly refused: string }
