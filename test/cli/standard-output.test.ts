import { existsSync, readdirSync } from 'node:fs'
import { expect, it } from 'vitest'
import { run } from '../../src/cli/run.ts'
import { bytesOf, rawContents, template, useFolder } from './reprint-run.ts'

const { file, list, plot } = useFolder()

/** A command line whose standard output another program reads; `screen`: where a person does. */
const piped = async (args: readonly string[], screen = false) => {
  let [out, err] = ['', '']
  const chunks: Uint8Array[] = []
  const exit = await run(args, {
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
    ...(screen ? {} : { bytes: (content: Uint8Array) => chunks.push(content) }),
  })
  return { exit, out, err, bytes: new Uint8Array(Buffer.concat(chunks)) }
}

it('--out - gives a PDF to the next program, the words beside it', async () => {
  const path = await plot('quarter-mm', '--paper', 'a3')
  const set = await piped(['plot', template('quarter-mm'), '--paper', 'a3', '--out', '-'])
  expect([set.exit, set.out]).toEqual([0, ''])
  expect(set.err).toMatch(/^standard output: \d+ pages on a3, set /)
  expect(Buffer.from(set.bytes).equals(bytesOf(path))).toBe(true)
  const page = await piped(['reprint', path, '1', '--out', '-'])
  expect([page.exit, page.out]).toEqual([0, ''])
  expect(await rawContents(page.bytes)).toHaveLength(1)
  for (const args of [
    ['square', '--out', '-'],
    ['booklet', template('quarter-mm'), '--only', 'first', '--out', '-'],
  ]) {
    const { exit, out, err, bytes } = await piped(args)
    expect([exit, out]).toEqual([0, ''])
    expect(err).toMatch(/^standard output: /)
    expect(Buffer.from(bytes.subarray(0, 5)).toString()).toBe('%PDF-')
  }
  expect(list()).toEqual(['quarter-mm.pdf'])
})

it('not to a screen, and not beside JSON', async () => {
  const design = template('quarter-mm')
  const screen = await piped(['plot', design, '--out', '-'], true)
  expect([screen.exit, screen.err]).toEqual([
    2,
    'cannot write -: standard output is a screen; pipe it on, or give the name of a file\n',
  ])
  const both = await piped(['plot', design, '--out', '-', '--json'])
  expect([both.exit, both.out, both.err, both.bytes.length]).toEqual([
    2,
    '',
    '--out - and --json both take standard output; give the PDF the name of a file\n',
    0,
  ])
})

it('many pages make no endless name, and an endless page floods no screen', async () => {
  const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'whole')
  const before = process.cwd()
  process.chdir(file('.'))
  try {
    const pages = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', 'map']
    expect((await piped(['reprint', path, ...pages])).exit).toBe(0)
    expect(readdirSync('.')).toContain('quarter-mm-1-2-3-4-5-6-7-8-and-3-more.pdf')
    const endless = await piped(['reprint', path, '9'.repeat(60_000)])
    expect(endless.exit).toBe(1)
    expect(endless.err).toMatch(/^there is no page `9{1,100}…/)
    expect(endless.err.length).toBeLessThan(1000)
    const named = await piped(['figures', 'x'.repeat(60_000)])
    expect(named.exit).toBe(2)
    expect(named.err.length).toBeLessThan(400)
  } finally {
    process.chdir(before)
  }
  expect(existsSync(file('--1.pdf'))).toBe(false)
})
