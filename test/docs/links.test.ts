import { existsSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { anchorsOf, pages, root } from './pages.ts'

interface Link {
  readonly target: string
  readonly image: boolean
}

const linksOf = (prose: string): readonly Link[] =>
  [...prose.matchAll(/(!?)\[[^\]]*\]\(([^)\s]+)\)/g)].map((match) => ({
    image: match[1] === '!',
    target: match[2]!,
  }))

/** The words in quotes that follow the name of a test after a colon: they stand in it. */
const quotesOf = (prose: string) =>
  [...prose.matchAll(/`(test\/[^`]+\.ts)`:\s+"([^"]+)"/g)].map((match) => ({
    test: match[1]!,
    quoted: match[2]!,
  }))

const packed: readonly string[] = JSON.parse(readFileSync(`${root}package.json`, 'utf8')).files

/** Whether it lies in the npm package, where nothing else of the sources does. */
const isPacked = (path: string): boolean =>
  packed.some((name) => path === name || path.startsWith(`${name}/`))

const relative = (target: string): boolean => !/^[a-z]+:/i.test(target)

describe.each(pages)('$path', (page) => {
  const links = linksOf(page.prose)

  it('has relative links that lead to files and headings, from the npm package to what lies in it', () => {
    const broken = links.filter(({ target }) => {
      if (!relative(target)) return false
      const [file = '', anchor] = target.split('#')
      const path = file === '' ? page.path : normalize(join(dirname(page.path), file))
      if (path.startsWith('..') || !existsSync(root + path)) return true
      if (isPacked(page.path) && !isPacked(path)) return true
      if (anchor === undefined) return false
      const there = pages.find((other) => other.path === path)
      return !there || !anchorsOf(there).includes(anchor)
    })
    expect(broken.map(({ target }) => target)).toEqual([])
  })

  it('shows pictures of its own, none over 60 kB, with words for those who do not see them', () => {
    for (const { target } of links.filter((link) => link.image)) {
      expect(relative(target), target).toBe(true)
      expect(statSync(join(root, dirname(page.path), target)).size, target).toBeLessThanOrEqual(60 * 1024)
    }
    expect(page.prose).not.toMatch(/!\[\s*\]/)
  })

  it('quotes words of a test that stand in it', () => {
    for (const { test, quoted } of quotesOf(page.prose))
      expect(
        readFileSync(root + test, 'utf8').includes(quoted.replace(/\s+/g, ' ')),
        `"${quoted}" in ${test}`,
      ).toBe(true)
  })

  it('names files and folders of the project that exist', () => {
    const named = [...page.prose.matchAll(/`((?:src|test|templates|docs)(?:\/[\w.-]+)*\/?)`/g)].map(
      (m) => m[1]!,
    )
    expect(named.filter((path) => !existsSync(root + path))).toEqual([])
  })
})

it('what is promised names a test: every line of the guarantees names one', () => {
  for (const [path, heading] of [
    ['README.md', '## What the output keeps to'],
    ['docs/architecture.md', '## Output guarantees'],
  ] as const) {
    const { prose } = pages.find((page) => page.path === path)!
    const section = prose.slice(prose.indexOf(heading)).split(/\n## /)[0]!.replace(heading, '')
    const lines = section.split(/\n- /).slice(1)
    expect(lines.length, path).toBeGreaterThan(5)
    const without = lines.filter((line) => quotesOf(line).length === 0)
    expect(without, path).toEqual([])
  }
})
