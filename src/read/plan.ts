import { planVersion, type SetPlan } from '../drawing/set-plan.ts'

/** Why a plan is not taken. */
export type PlanFault =
  /** not what was written: its seal does not match, or it cannot be read at all */
  | { readonly kind: 'edited' }
  | { readonly kind: 'newer'; readonly version: number }
  /** ours, of a time when pages did not prove which they are */
  | { readonly kind: 'unproven' }

/** Plans did not always say what an expected error is reckoned from; their pages did not prove which they are either. */
const isOlder = ({ expected }: Readonly<Record<string, unknown>>): boolean =>
  Array.isArray(expected) && expected.some((one) => isRecord(one) && !('budget' in one))

/** A plan from its text, checked against its seal and then in each of its fields. */
export const readPlan = (
  text: string,
  fingerprint: (text: string) => string,
): { readonly plan: SetPlan } | { readonly fault: PlanFault } => {
  const value = parsed(text)
  if (!isRecord(value)) return { fault: { kind: 'edited' } }
  const { version } = value
  if (typeof version === 'number' && version > planVersion) return { fault: { kind: 'newer', version } }
  const { seal, ...sealed } = value
  // a wrong shape under a true seal is no plan of this version either
  if (seal !== fingerprint(JSON.stringify(sealed))) return { fault: { kind: 'edited' } }
  if (isPlan(value)) return { plan: value }
  return { fault: { kind: isOlder(value) ? 'unproven' : 'edited' } }
}

/** A set has at most 2,000 pages to tape; with the others, still fewer than these. */
const mostPages = 2500

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

type Check = (value: unknown) => boolean

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const text: Check = (value) => typeof value === 'string'
const number: Check = (value) => typeof value === 'number'
const positive: Check = (value) => typeof value === 'number' && value > 0
const list =
  (each: Check): Check =>
  (value) =>
    Array.isArray(value) && value.every(each)
const numbers =
  (count: number): Check =>
  (value) =>
    list(number)(value) && (value as readonly unknown[]).length === count
const orNone =
  (check: Check, none: null | undefined): Check =>
  (value) =>
    value === none || check(value)
const record =
  (fields: Readonly<Record<string, Check>>): Check =>
  (value) =>
    isRecord(value) && Object.entries(fields).every(([key, check]) => check(value[key]))

const shape = record({
  version: (value) => value === planVersion,
  set: text,
  paper: record({ name: text, width: positive, height: positive }),
  margins: record({ top: number, right: number, bottom: number, left: number }),
  overlap: number,
  printer: orNone(text, null),
  correction: numbers(4),
  expected: list(
    record({
      pattern: text,
      budget: record({ run: number, rise: number, joints: number, bound: orNone(number, null) }),
    }),
  ),
  pages: list(
    record({
      page: positive,
      // one that a later program knows is a page like any other
      kind: text,
      tile: orNone(text, undefined),
      holds: orNone(list(text), undefined),
      places: list(record({ pattern: text, toPattern: numbers(6), window: numbers(4) })),
    }),
  ),
  reprint: orNone(list(positive), undefined),
})

/** Also: pages are numbered from 1, and what a reprint holds is among them. */
const isPlan = (value: unknown): value is SetPlan => {
  if (!shape(value)) return false
  const { pages, reprint } = value as SetPlan
  const numbered =
    pages.length > 0 && pages.length <= mostPages && pages.every(({ page }, i) => page === i + 1)
  return numbered && (reprint ?? []).every((page) => pages[page - 1] !== undefined)
}
