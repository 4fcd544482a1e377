import { existsSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'
import { anchorsOf, pages, root } from './pages.ts'

interface Link {
  readonly target: string
  readonly image: boolean
  /** the words in quotes that follow it after a colon: they stand in the file that it leads to */
  readonly quoted: string | undefined
}

const linksOf = (prose: string): readonly Link[] =>
  [...prose.matchAll(/(!?)\[[^\]]*\]\(([^)\s]+)\)(?::\s+"([^"]+)")?/g)].map((match) => ({
    image: match[1] === '!',
    target: match[2]!,
    quoted: match[3],
  }))

const relative = (target: string): boolean => !/^[a-z]+:/i.test(target)

describe.each(pages)('$path', (page) => {
  const links = linksOf(page.prose)

  it('has relative links that lead to files and headings', () => {
    const broken = links.filter(({ target }) => {
      if (!relative(target)) return false
      const [file = '', anchor] = target.split('#')
      const path = file === '' ? page.path : normalize(join(dirname(page.path), file))
      if (path.startsWith('..') || !existsSync(root + path)) return true
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
    for (const { target, quoted } of links) {
      if (quoted === undefined || !target.endsWith('.ts')) continue
      const source = readFileSync(join(root, dirname(page.path), target), 'utf8')
      expect(source.includes(quoted.replace(/\s+/g, ' ')), `"${quoted}" in ${target}`).toBe(true)
    }
  })

  it('names files and folders of the project that exist', () => {
    const named = [...page.prose.matchAll(/`((?:src|test|templates|docs)(?:\/[\w.-]+)*\/?)`/g)].map(
      (m) => m[1]!,
    )
    expect(named.filter((path) => !existsSync(root + path))).toEqual([])
  })
})

it('what is promised names a test: every line of the guarantees has a link to one', () => {
  for (const [path, heading] of [
    ['README.md', '## What the output keeps to'],
    ['docs/architecture.md', '## Output guarantees'],
  ] as const) {
    const { prose } = pages.find((page) => page.path === path)!
    const section = prose.slice(prose.indexOf(heading)).split(/\n## /)[0]!.replace(heading, '')
    const lines = section.split(/\n- /).slice(1)
    expect(lines.length, path).toBeGreaterThan(5)
    const without = lines.filter((line) => !/\]\([./]*test\/[^)]+\.ts\):\s+"[^"]+"/.test(line))
    expect(without, path).toEqual([])
  }
})
