import { afterEach, expect, it, vi } from 'vitest'
import { readProfile, writeProfile } from '../../src/index.ts'
import {
  fileAfter,
  firstText,
  forgottenOf,
  isChanged,
  isTaken,
  keepLastPrinter,
  keepPrinter,
  keepTab,
  keptDesign,
  keptTab,
  keptWhole,
  type Tab,
} from '../../src/web/state/keep.ts'

const hall = JSON.stringify({
  version: 1,
  name: 'hall',
  paper: 'a4',
  across: 0.996,
  down: 1,
  skewDegrees: 0,
  margins: null,
  readings: ['across 149.4mm', 'down 150mm'],
})

const tab: Tab = {
  given: '',
  text: 'units: mm\n',
  whole: 'units: in\n',
  lay: { words: { cover: 'ribbon', strips: true, overlap: '15' }, profile: hall },
}

/** A browser's place that holds this. */
const placeOf = (held = new Map<string, string>()) => ({
  getItem: (key: string) => held.get(key) ?? null,
  setItem: (key: string, text: string) => held.set(key, text),
})

/** What a tab is when its place holds this text under each key. */
const readFrom = (text: string | null) => {
  vi.stubGlobal('sessionStorage', { getItem: () => text })
  return keptTab('')
}

afterEach(() => {
  vi.unstubAllGlobals()
})

it('a tab is read as it was kept', () => {
  vi.stubGlobal('sessionStorage', placeOf())
  vi.stubGlobal('localStorage', placeOf())
  expect(keepTab(tab, true)).toBe(true)
  const { text, whole, lay } = tab
  expect(keptTab('')).toEqual({ text, whole, lay })
  expect(keptWhole()).toBe(whole)
  // of another file only how it is laid
  expect(keptTab('"units: in"')).toEqual({ text: null, whole: null, lay })
})

it('a tab that was only looked at leaves the last design that another one kept', () => {
  vi.stubGlobal('localStorage', placeOf())
  vi.stubGlobal('sessionStorage', placeOf())
  keepTab(tab, true)
  vi.stubGlobal('sessionStorage', placeOf())
  const other = { ...tab, text: 'units: cm\n', whole: 'units: m\n' }
  expect(keepTab(other, false)).toBe(true)
  expect([keptDesign(), keptWhole()]).toEqual([tab.text, tab.whole])
  expect(keptTab('').text).toBe(other.text)
})

it('a design that is read after it was typed is kept once more, one that a tab began with is not', () => {
  const { text } = tab
  expect(isChanged(tab, { text })).toBe(false)
  expect(isChanged(tab, { text: 'units: cm\n' })).toBe(true)
  expect(isChanged({ ...tab, whole: text }, tab)).toBe(true)
  expect(isChanged({ ...tab, whole: text }, { text })).toBe(false)
  expect(isChanged(tab, tab)).toBe(false)
})

it("another's design, in a link or in the page's file, is shown before one's own, which is behind it", () => {
  const none = { linked: null, tab: null, given: null, last: null }
  for (const [found, text, own] of [
    [none, null, null],
    [{ ...none, last: 'last' }, 'last', null],
    [{ ...none, tab: 'tab', last: 'last' }, 'tab', null],
    [{ ...none, given: 'given' }, 'given', null],
    [{ ...none, given: 'given', last: 'last' }, 'given', 'last'],
    // once that file was changed in this tab, it is one's own
    [{ ...none, tab: 'tab', given: 'given', last: 'last' }, 'tab', null],
    [{ ...none, linked: 'link', given: 'given', last: 'last' }, 'link', 'last'],
    [{ ...none, linked: 'link', tab: 'tab', last: 'last' }, 'link', 'tab'],
    // loaded again
    [{ ...none, linked: 'link', tab: 'link', last: 'last' }, 'link', null],
  ] as const)
    expect(firstText(found), JSON.stringify(found)).toEqual({ text, own })
})

it('a new tab begins with the printer that was taken last, or with none where none was', () => {
  vi.stubGlobal('localStorage', placeOf())
  vi.stubGlobal('sessionStorage', placeOf())
  const first = () => keptTab('').lay
  expect(first()).toEqual({ words: {}, profile: null })
  keepLastPrinter(hall)
  expect(first()).toEqual({ words: {}, profile: hall })
  // a tab that took none keeps to that
  keepTab({ ...tab, lay: { words: {}, profile: null } }, true)
  expect(first().profile).toBe(null)
  vi.stubGlobal('sessionStorage', placeOf())
  keepLastPrinter(null)
  expect(first().profile).toBe(null)
  keepLastPrinter('{}')
  expect(first().profile).toBe(null)
  // one that another tab measured anew is that one, in a tab that had it and in a new one
  const anew = hall.replace('149.4', '149').replace('0.996', '0.993')
  keepLastPrinter(hall)
  keepTab(tab, true)
  keepPrinter('hall', anew)
  keepPrinter('shed', hall.replace('hall', 'shed'))
  expect(first().profile).toBe(anew)
  vi.stubGlobal('sessionStorage', placeOf())
  expect(first().profile).toBe(anew)
  keepPrinter('hall', '{}')
  expect(first().profile).toBe(hall)
})

it('a printer that is measured anew where there is no room for it is not the old one after a reload', () => {
  const anew = hall.replace('149.4', '149.25').replace('0.996', '0.995')
  const place = placeOf()
  const full = {
    ...place,
    setItem: (key: string, text: string) => {
      if (text.length > (place.getItem(key) ?? '').length) throw new Error('full')
      return place.setItem(key, text)
    },
  }
  vi.stubGlobal('localStorage', place)
  vi.stubGlobal('sessionStorage', placeOf())
  keepPrinter('hall', hall)
  vi.stubGlobal('localStorage', full)
  expect(keepPrinter('hall', anew)).toBe(false)
  keepTab({ ...tab, lay: { ...tab.lay, profile: anew } }, true)
  expect(keptTab('').lay.profile).toBe(anew)
})

it('a printer is kept already where another one has its name, whatever that is', () => {
  for (const name of ['hall', 'constructor', '__proto__']) {
    const one = readProfile(JSON.stringify({ ...JSON.parse(hall), name }))
    if ('error' in one) throw new Error(one.error)
    const other = { ...one, across: 0.99 }
    const printers = Object.fromEntries([[name, writeProfile(other)]])
    expect(isTaken(one, {}), name).toBe(false)
    expect(isTaken(one, printers), name).toBe(true)
    expect(isTaken(other, printers), name).toBe(false)
  }
})

it('a printer that another tab forgot is taken no more, one that was never kept is', () => {
  const anew = hall.replace('149.4', '149').replace('0.996', '0.993')
  const shed = hall.replace('hall', 'shed')
  const both = { hall, shed }
  expect(fileAfter(hall, both, { shed })).toBe(null)
  expect(forgottenOf(both, { shed })?.name).toBe('hall')
  expect(fileAfter(shed, both, { shed })).toBe(shed)
  expect(fileAfter(hall, both, { hall: anew, shed })).toBe(anew)
  expect(fileAfter(hall, { shed }, {})).toBe(hall)
  expect(fileAfter(anew, both, { shed })).toBe(anew)
  expect(forgottenOf({ shed }, both)).toBe(null)
  expect(forgottenOf({ shed: '{}' }, {})).toBe(null)
})

it('what of a tab cannot be read is as if it were not there', () => {
  const none = { text: null, whole: null, lay: { words: {}, profile: null } }
  for (const text of [null, '', 'units: mm\n', '7', '[]', 'null', '{"text":7,"lay":7}'])
    expect(readFrom(text), String(text)).toEqual(none)
  const torn = {
    words: { cover: 7, strips: 'yes', margin: null, overlap: '15', toString: 'x' },
    profile: '{}',
  }
  expect(readFrom(JSON.stringify({ ...tab, lay: torn }))).toEqual({
    text: tab.text,
    whole: tab.whole,
    lay: { words: { overlap: '15' }, profile: null },
  })
  vi.stubGlobal('sessionStorage', undefined)
  expect(keptTab('')).toEqual(none)
})
