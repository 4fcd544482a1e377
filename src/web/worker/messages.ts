import type { Cover } from '../../index.ts'

/** What the page asks of its worker. One question at a time; a newer one of the same kind takes the place of an older. */
export type Question =
  | { readonly kind: 'counts'; readonly text: string }
  | { readonly kind: 'set'; readonly text: string; readonly cover: Cover | null }
  | { readonly kind: 'square'; readonly units: 'mm' | 'in'; readonly paper: string }

export interface Saved {
  readonly name: string
  readonly type: string
  readonly bytes: Uint8Array
  readonly warnings: readonly string[]
}

export type Answer =
  | { readonly kind: 'counts'; readonly counts: Readonly<Record<Cover, number>>; readonly chosen: Cover }
  | { readonly kind: 'file'; readonly file: Saved }

/** From the worker: how far it is, then one answer or a refusal in words. */
export type Reply =
  | { readonly id: number; readonly page: number; readonly of: number }
  | { readonly id: number; readonly answer: Answer }
  | { readonly id: number; readonly refused: string }
