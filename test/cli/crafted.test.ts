import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, expect, it } from 'vitest'
import { crafted } from '../hard/crafted.ts'
import { traceply } from '../support/traceply.ts'
import { bytesOf, template, useFolder } from './reprint-run.ts'

const { file, save } = useFolder()

let set: Uint8Array
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'traceply-'))
  const path = join(folder, 'set.pdf')
  const small = ['--paper', 'a3', '--cover', 'line']
  expect((await traceply('plot', template('quarter-mm'), ...small, '--out', path)).exit).toBe(0)
  set = bytesOf(path)
  rmSync(folder, { recursive: true })
})

it.each(crafted(false))(
  'a PDF that nobody makes by mistake: $name',
  async ({ craft, said, pages, taken }) => {
    const path = save('crafted.pdf', await craft(set))
    const out = file('out.pdf')
    const { exit, err, out: words } = await traceply('reprint', path, ...(pages ?? ['1']), '--out', out)
    expect([exit, existsSync(out)]).toEqual(taken ? [0, true] : [1, false])
    expect(err).toMatch(said)
    expect(`${words}${err}`).not.toMatch(/(?![\n\t])[\p{Cc}\u202e]/u)
    expect(err).not.toMatch(/undefined|NaN|\[object/)
  },
)
