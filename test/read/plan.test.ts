import { describe, expect, it } from 'vitest'
import { readPlan } from '../../src/read/plan.ts'
import { fingerprint, layOut } from '../support/lay-out.ts'
import { templates, templateText } from '../support/templates.ts'

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

const set = layOut(templateText('quarter-mm'), 'a3', 'line')!
const written = JSON.stringify(set.plan)
const plan: Json = JSON.parse(written)

const read = (value: unknown) => readPlan(JSON.stringify(value), fingerprint)
const sealed = ({ seal: _, ...rest }: Record<string, unknown>) => ({
  ...rest,
  seal: fingerprint(JSON.stringify(rest)),
})

/** The value at every leaf, list and record replaced in turn: paths with what came of it. */
const changedAt = (
  value: Json,
  change: (leaf: Json) => Json | undefined,
  path = '',
): (readonly [string, Json])[] => {
  const own: (readonly [string, Json])[] = []
  const put = (to: Json | undefined): void => {
    if (to !== undefined) own.push([path, to])
  }
  put(change(value))
  if (Array.isArray(value))
    for (const [i, item] of value.entries())
      for (const [at, to] of changedAt(item, change, `${path}[${i}]`))
        own.push([at, value.map((v: Json, k: number) => (k === i ? to : v))])
  else if (typeof value === 'object' && value !== null)
    for (const [key, item] of Object.entries(value))
      for (const [at, to] of changedAt(item, change, `${path}.${key}`))
        own.push([at, { ...value, [key]: to }])
  return own
}

describe('a plan', () => {
  it.each(templates)('of %s is taken as it was written', (name) => {
    for (const cover of ['whole', 'line', 'ribbon'] as const) {
      const of = layOut(templateText(name), 'a4', cover)!.plan
      expect(read(of)).toEqual({ plan: JSON.parse(JSON.stringify(of)) })
    }
  })

  it('carries its margins and its overlap', () => {
    expect(set.plan.margins).toEqual({ top: 10, right: 10, bottom: 10, left: 10 })
    expect(set.plan.overlap).toBe(12)
    expect(Object.keys(set.plan).at(-1)).toBe('seal')
  })

  it.each<readonly [string, (leaf: Json) => Json | undefined]>([
    ['a number is a hair larger', (v) => (typeof v === 'number' ? v * (1 + 2e-16) + 5e-324 : undefined)],
    ['a text has a blank more', (v) => (typeof v === 'string' ? `${v} ` : undefined)],
    ['a list is turned round', (v) => (Array.isArray(v) && v.length > 1 ? v.toReversed() : undefined)],
    [
      'a record has a key more',
      (v) => (v && typeof v === 'object' && !Array.isArray(v) ? { ...v, more: 0 } : undefined),
    ],
    ['a value is null', (v) => (v === null ? 0 : null)],
  ])('is refused where %s, wherever that is', (_, change) => {
    const edits = changedAt(plan, change)
    expect(edits.length).toBeGreaterThan(10)
    for (const [path, edit] of edits) {
      // an edit that JSON does not show is none
      if (JSON.stringify(edit) === written) continue
      const found = read(edit)
      const newer = path === '.version' && typeof (edit as { version: Json }).version === 'number'
      expect(found, path).toMatchObject({ fault: newer ? { kind: 'newer' } : { kind: 'edited' } })
    }
  })

  it('is refused where a value has another kind, even under a true seal', () => {
    const edits = changedAt(plan, (v) =>
      v === null ? [] : Array.isArray(v) ? {} : typeof v === 'object' ? [] : { was: v },
    )
    // what a reprint does not ask for is not looked at: the seal vouches for it
    const free = /^\.(cover|design|expected|pages\[\d+\]\.(pattern|toPattern|window))\b/
    const looked = edits.filter(([path]) => path !== '.seal' && !free.test(path))
    expect(looked.length).toBeGreaterThan(40)
    for (const [path, edit] of looked)
      expect(read(Array.isArray(edit) ? edit : sealed(edit as Record<string, unknown>)), path).toEqual({
        fault: { kind: 'edited' },
      })
  })

  it.each([
    ['no page', { pages: [] }],
    ['pages that do not count from 1', { pages: set.plan.pages.toReversed() }],
    ['a reprint of a page that there is not', { reprint: [99] }],
    ['a reprint of a part of a page', { reprint: [1.5] }],
    ['a version of its own', { version: 0 }],
    ['a version in words', { version: '1' }],
    ['paper without width', { paper: { name: 'a4', width: 0, height: 297 } }],
  ])('is refused with %s under a true seal', (_, edit) => {
    expect(read(sealed({ ...set.plan, ...edit }))).toEqual({ fault: { kind: 'edited' } })
  })

  it('of a newer version is told as such before its seal is asked for', () => {
    expect(read({ version: 2 })).toEqual({ fault: { kind: 'newer', version: 2 } })
  })
})
