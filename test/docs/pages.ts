import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url))

export interface Page {
  /** from the top of the project, with `/` */
  readonly path: string
  readonly text: string
  /** without its code blocks */
  readonly prose: string
}

const pageAt = (path: string): Page => {
  const text = readFileSync(root + path, 'utf8')
  return { path, text, prose: text.replace(/^```[\s\S]*?^```$/gm, '') }
}

export const readme = pageAt('README.md')

/** Every page that is written by hand or generated. */
export const pages: readonly Page[] = [
  readme,
  pageAt('DEVELOPERS.md'),
  ...readdirSync(`${root}docs`)
    .filter((name) => name.endsWith('.md'))
    .map((name) => pageAt(`docs/${name}`)),
]

/** The pages that a builder reads. */
export const builderPages = pages.filter(({ path }) => path !== 'DEVELOPERS.md')

export const pageOf = (path: string): Page => {
  const found = pages.find((page) => page.path === path)
  if (!found) throw new Error(`there is no page ${path}`)
  return found
}

/** What a heading becomes as an anchor: lower case, punctuation dropped, blanks to hyphens. */
export const anchorsOf = ({ prose }: Page): readonly string[] => {
  const seen = new Map<string, number>()
  return [...prose.matchAll(/^#{1,6} +(.+?) *$/gm)].map((match) => {
    const anchor = match[1]!
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .replace(/\s/g, '-')
    const count = seen.get(anchor) ?? 0
    seen.set(anchor, count + 1)
    return count === 0 ? anchor : `${anchor}-${count}`
  })
}

/** The lines of the ```sh blocks of a page. */
export const shellLines = ({ text }: Page): readonly string[] =>
  [...text.matchAll(/^```sh\n([\s\S]*?)^```$/gm)].flatMap((match) =>
    match[1]!.split('\n').filter((line) => line.trim() !== ''),
  )

export const scripts: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(`${root}package.json`, 'utf8'),
).scripts
