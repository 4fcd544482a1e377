/** Which page of which set a page is, as it stands at the head of its content: other programs move pages, and content with them. */
export interface PageProof {
  readonly set: string
  /** from 1, as in the plan */
  readonly page: number
}

const tag = '/TraceplyPage'

/** A marked-content point: it draws nothing (ISO 32000-1, 14.6). */
export const pageProof = ({ set, page }: PageProof): string => `${tag} <</Set (${set})/Number ${page}>> DP\n`

const form = /\/TraceplyPage <<\/Set \(([A-Z0-9-]{1,40})\)\/Number (\d{1,6})>> DP\n/

/** It lies within so many bytes of the head, behind what a reprint puts before it. */
const headLength = 400

/** The proof in the operators of a page; null where there is none. */
export const readPageProof = (content: Uint8Array): PageProof | null => {
  const [, set, page] = form.exec(String.fromCharCode(...content.subarray(0, headLength))) ?? []
  return set === undefined ? null : { set, page: Number(page) }
}

/** The operators without it. */
export const withoutProof = (operators: string): string => operators.replace(form, '')
