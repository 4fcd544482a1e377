import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** What is built from, but for what npm installs. */
export const sources = [
  'package.json',
  'tsconfig.json',
  '.build.mjs',
  '.build-code.cjs',
  '.build-page.mjs',
  '.build-type.mjs',
  '.build-used.mjs',
  '.tsconfig.types.json',
  'src',
] as const

const deep = { recursive: true, encoding: 'utf8' } as const
const inSource = (name: string): string => join('src', name)

/** Whether `dist` is whole, the page being its last, and nothing that it is built from is younger: `npm ci` may just have built it. */
export const isFresh = (): boolean => {
  const built = statSync('dist/traceply.html', { throwIfNoEntry: false })
  const all = [...sources, 'node_modules/.package-lock.json', ...readdirSync('src', deep).map(inSource)]
  return built !== undefined && all.every((path) => statSync(path).mtimeMs < built.mtimeMs)
}
