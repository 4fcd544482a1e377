import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { pages, readme, root } from './pages.ts'

/** A drawing cannot promise these. */
const promises = [/\bsafe(ly)?\b/i, /\bcompl(y|ies|iant)\b/i]

/** Figures that belong to others' ramps, not to our boathouse. */
const foreign = [
  /\b6[26] in\b/,
  /\bradius[^.\n]{0,20}\b6[26]\b/i,
  /\b23 1\/4\b/,
  /\b61 1\/4\b/,
  /\b57 3\/4\b/,
  /\bwidth:? *96\b/i,
  /\bsides?\b[^.\n|]{0,20}\b5\/8\b/i,
]

describe.each(pages)('$path', ({ text }) => {
  it('promises nothing that paper cannot keep', () => {
    for (const word of promises) expect(text).not.toMatch(word)
  })

  it('has examples of our own', () => {
    for (const figure of foreign) expect(text).not.toMatch(figure)
  })
})

describe('the README', () => {
  it('tells the job in one paragraph before any heading but the title', () => {
    const [title, job, ...rest] = readme.text.split(/\n\s*\n/)
    expect(title).toMatch(/^# [^\n]+$/)
    expect(job).not.toMatch(/^[#>|`!\-*]/)
    expect(job!.split(/\s+/).length).toBeGreaterThan(40)
    expect(rest.findIndex((part) => part.startsWith('#'))).toBeGreaterThanOrEqual(0)
  })

  it('has the two commands and five steps', () => {
    expect(readme.text).toContain('npm ci && npm run demo')
    expect(readme.text).toContain('npm ci && npm test')
    expect([...readme.prose.matchAll(/^\*\*(\d)\. /gm)].map((match) => match[1])).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
    ])
  })

  it.each(['saw', 'dust', 'two people lift', 'zinc', 'helmet', 'guards', 'Local codes'])(
    'warns: %s',
    (words) => {
      const cautions = readme.prose.split('## Cautions')[1]!.split(/^## /m)[0]!
      expect(cautions.replace(/\s+/g, ' ').toLowerCase()).toContain(words.toLowerCase())
    },
  )
})

it.skipIf(!existsSync(`${root}.git`))('the top of the project holds only what belongs there', () => {
  const known = [
    'README.md',
    'DEVELOPERS.md',
    'LICENSE',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'biome.json',
    'src',
    'test',
    'templates',
    'docs',
  ]
  const tracked = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0')
  const top = [...new Set(tracked.filter((path) => path !== '').map((path) => path.split('/')[0]!))]
  expect(top.filter((name) => !known.includes(name) && !name.startsWith('.'))).toEqual([])
})
