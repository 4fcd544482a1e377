import node, * as fs from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import { afterEach, expect, it } from 'vitest'
import { traceply } from '../support/traceply.ts'
import { template, useFolder } from './reprint-run.ts'

const { file, list } = useFolder()

const { writeFileSync } = node
const put = (write: typeof writeFileSync): void => {
  Object.assign(node, { writeFileSync: write })
  syncBuiltinESMExports()
}
afterEach(() => put(writeFileSync))

it('a disk that is full once the pages are written: what is written is said', async () => {
  let written = 0
  put((...args) => {
    if (written++ > 0) throw Object.assign(new Error('as told'), { code: 'ENOSPC' })
    writeFileSync(...args)
  })
  const args = ['plot', template('quarter-mm'), '--out', file('set.pdf'), '--map', file('map.png')]
  const { exit, out, err } = await traceply(...args)
  expect([exit, out]).toEqual([2, ''])
  expect(err).toBe(
    `cannot write ${file('map.png')}: the disk is full; make room or choose another one; the pages are written: ${file('set.pdf')}\n`,
  )
  expect(list()).toEqual(['set.pdf'])
  expect(fs.readFileSync(file('set.pdf')).toString('latin1', 0, 5)).toBe('%PDF-')
})
