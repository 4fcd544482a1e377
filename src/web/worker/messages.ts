import type { Check, ChosenRamp, Cover, LayingWords, SetPlan, WishWords } from '../../index.ts'

/** How pages are laid: the words of a form, and the measured printer as its file has it. */
export interface Lay {
  readonly words: LayingWords
  readonly profile: string | null
}

export type Format = 'pdf' | 'png' | 'svg' | 'csv' | 'json' | 'txt'

/** What can be saved, and as what. */
export const formatsOf = {
  pages: ['pdf'],
  map: ['png'],
  square: ['pdf'],
  booklet: ['pdf'],
  cuts: ['pdf', 'svg', 'csv', 'json', 'txt'],
  list: ['pdf', 'csv', 'json', 'txt'],
  offsets: ['pdf', 'csv', 'json', 'txt'],
  picture: ['pdf', 'svg', 'png'],
  figures: ['json'],
} as const satisfies Readonly<Record<string, readonly Format[]>>
export type Thing = keyof typeof formatsOf

/** What the page asks of its worker; it is answered in turn. */
export type Question =
  /** what is wrong with a design that can be read, its remedies tried; and its figures that are left open */
  | { readonly kind: 'checks'; readonly text: string }
  /** how many pages each cover takes */
  | { readonly kind: 'counts'; readonly text: string; readonly lay: Lay }
  /** where the pages of the chosen one lie */
  | { readonly kind: 'plan'; readonly text: string; readonly lay: Lay }
  /** one page as it will print */
  | { readonly kind: 'page'; readonly text: string; readonly lay: Lay; readonly page: number }
  | {
      readonly kind: 'save'
      readonly thing: Thing
      readonly format: Format
      readonly text: string
      readonly lay: Lay
      /** of the pages those of this name alone: `3`, `trial`, `strips` */
      readonly only?: string
      /** as the printer prints it by itself, whichever is taken: what is measured on it is the printer's own */
      readonly uncorrected?: true
    }
  /** what a file is that was dropped on the page: a set says its plan */
  | { readonly kind: 'open-set'; readonly bytes: Uint8Array }
  | {
      readonly kind: 'reprint'
      /** of the set's file */
      readonly name: string
      readonly bytes: Uint8Array
      readonly pages: readonly string[]
      readonly profile: string | null
    }
  /** what a printer does to this ramp, in words */
  | { readonly kind: 'effect'; readonly text: string; readonly profile: string }
  /** ramps that keep what is wished */
  | { readonly kind: 'choose'; readonly wishes: WishWords }

/** How what is saved is laid. */
export const layOf = ({ lay, uncorrected }: Extract<Question, { kind: 'save' }>): Lay =>
  uncorrected ? { ...lay, profile: null } : lay

export interface Saved {
  readonly name: string
  readonly type: string
  readonly bytes: Uint8Array
  readonly warnings: readonly string[]
}

export type Answer =
  | {
      readonly kind: 'checks'
      readonly checks: readonly Check[]
      readonly stopped: boolean
      /** the design with every figure that it left open */
      readonly filled: string
      /** what was found, a line each */
      readonly found: readonly string[]
    }
  | {
      readonly kind: 'counts'
      readonly counts: Readonly<Record<Cover, number>>
      readonly cover: Cover
      readonly why: string | null
    }
  | {
      readonly kind: 'plan'
      readonly plan: SetPlan
      /** what speaks against the printer's figures for these pages */
      readonly warnings: readonly string[]
    }
  | {
      readonly kind: 'page'
      readonly svg: string
      readonly width: number
      readonly height: number
      /** quarter turns, clockwise, that its words are turned by */
      readonly turn: number
    }
  | { readonly kind: 'file'; readonly file: Saved }
  | {
      readonly kind: 'open-set'
      readonly plan: SetPlan
      /** the pages that the file holds, numbers of the plan */
      readonly here: readonly number[]
      /** empty where the file holds none */
      readonly design: string
      /** how its pages were laid */
      readonly words: LayingWords
    }
  | { readonly kind: 'effect'; readonly lines: readonly string[] }
  | { readonly kind: 'choose'; readonly ramps: readonly ChosenRamp[]; readonly notes: readonly string[] }

/** From the worker: how far it is, then one answer or a refusal in words. */
export type Reply =
  | { readonly id: number; readonly page: number; readonly of: number }
  | { readonly id: number; readonly answer: Answer }
  | { readonly id: number; readonly refused: string }
