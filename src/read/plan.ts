import { planVersion, type SetPlan } from '../drawing/set-plan.ts'
import { pointsPerMm } from '../geometry/inch.ts'

/** Why a plan is not taken. */
export type PlanFault =
  /** not what was written: its seal does not match, or it cannot be read at all */
  { readonly kind: 'edited' } | { readonly kind: 'newer'; readonly version: number }

/** Of a time when plans did not say what an expected error is reckoned from; their pages did not prove which they are either. */
export const isOlder = ({ expected }: SetPlan): boolean => expected.some(({ budget }) => budget === undefined)

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
  return isPlan(value) ? { plan: value } : { fault: { kind: 'edited' } }
}

/** A set has at most 2,000 pages to tape; with the others, still fewer than these. */
const mostPages = 2500

/** Parts on one page, all of them. */
const mostPlaces = 500

/** No pattern reaches farther from its zero, mm. */
const farthest = 100_000

/** A printer in order is 3 % off at most; what is farther off is no correction. */
const mostCorrection = 0.2

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
// 1e999 is read as infinity
const number: Check = Number.isFinite
const positive: Check = (value) => number(value) && (value as number) > 0
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

/** About full size: what is printed for another printer is larger or smaller by its correction. */
const isPlaced: Check = (value) => {
  if (!numbers(6)(value)) return false
  const [a, b, c, d, e, f] = value as readonly [number, number, number, number, number, number]
  const size = Math.abs(a * d - b * c) * pointsPerMm ** 2
  return size > 0.5 && size < 2 && Math.max(Math.abs(e), Math.abs(f)) <= farthest
}

const isWindow: Check = (value) => {
  if (!numbers(4)(value)) return false
  const [x0, y0, x1, y1] = value as readonly [number, number, number, number]
  return x0 < x1 && y0 < y1 && Math.max(...(value as readonly number[]).map(Math.abs)) <= farthest
}

const isCorrection: Check = (value) =>
  numbers(4)(value) &&
  (value as readonly number[]).every((v, i) => Math.abs(v - (i === 0 || i === 3 ? 1 : 0)) <= mostCorrection)

const shape = record({
  version: (value) => value === planVersion,
  set: text,
  paper: record({ name: text, width: positive, height: positive }),
  margins: record({ top: number, right: number, bottom: number, left: number }),
  overlap: number,
  printer: orNone(text, null),
  correction: isCorrection,
  expected: list(
    record({
      pattern: text,
      budget: orNone(
        record({
          run: number,
          rise: number,
          rows: orNone((value) => value === 'down', undefined),
          joints: number,
          bound: orNone(number, null),
        }),
        undefined,
      ),
    }),
  ),
  pages: list(
    record({
      page: positive,
      // one that a later program knows is a page like any other
      kind: text,
      tile: orNone(text, undefined),
      holds: orNone(list(text), undefined),
      places: (value) =>
        list(record({ pattern: text, toPattern: isPlaced, window: isWindow }))(value) &&
        (value as readonly unknown[]).length <= mostPlaces,
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
