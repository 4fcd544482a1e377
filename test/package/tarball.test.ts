import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import manifest from '../../package.json'
import { buildIn } from '../cli/built.ts'
import { readPdf } from '../support/read-pdf.ts'

/** A project of somebody else's that has the packed tarball and what that depends on, and nothing of ours. */
const home = mkdtempSync(join(tmpdir(), 'traceply-tarball-'))
const project = join(home, 'project')

beforeAll(async () => {
  const built = join(home, 'built')
  mkdirSync(built)
  await buildIn(built)
  const [{ filename }] = JSON.parse(
    execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', home], {
      cwd: built,
      encoding: 'utf8',
    }),
  )
  const modules = join(project, 'node_modules')
  mkdirSync(join(modules, 'traceply'), { recursive: true })
  execFileSync('tar', [
    '-xzf',
    join(home, filename),
    '-C',
    join(modules, 'traceply'),
    '--strip-components',
    '1',
  ])
  mkdirSync(join(modules, '@pdf-lib'))
  for (const name of Object.keys(manifest.dependencies))
    symlinkSync(resolve('node_modules', name), join(modules, name))
  writeFileSync(join(project, 'package.json'), '{ "type": "module" }')
})
afterAll(() => rmSync(home, { recursive: true, force: true }))

/** From text to files and back, with the public names alone: TypeScript without types that only it has. */
const program = `
import { createHash } from 'node:crypto'
import { writeFileSync } from 'node:fs'
import { deflateSync, inflateSync } from 'node:zlib'
import {
  copyPdf, figuresJob, figuresRecord, gaugeJob, isRefusal, offsetsCells, offsetsJob, pageContent, pickPages, plotJob,
  readDesign, readProfile, readSetPdf, reprintInput, reprintJob, setInput, squareJob, starterFor, usualLaying, writeCsv,
  writePdf, writeProfile, writeStarter,
} from 'traceply'

const sha256 = (data) => createHash('sha256').update(data).digest('hex')
const platform = {
  deflate: (bytes) => new Uint8Array(deflateSync(bytes)),
  digest: (bytes) => createHash('md5').update(bytes).digest(),
}
const reading = { inflate: (bytes) => inflateSync(bytes), fingerprint: sha256 }
const good = (result) => {
  if (isRefusal(result)) throw new Error(JSON.stringify(result))
  return result
}

const text = writeStarter(starterFor('quarter', 'mm'))
const read = readDesign(text)
if ('problems' in read) throw new Error('a starter is good')
const { design } = read
const kept = good(gaugeJob('shed', { across: ['149mm'], down: ['150.5mm'] }, 'a4'))
const profile = readProfile(writeProfile(kept))
if ('error' in profile) throw new Error(profile.error)

const { set } = good(plotJob(design, text, usualLaying(design.paper), sha256))
const pdf = await writePdf(setInput(set, design.title), platform)
writeFileSync('set.pdf', pdf.bytes)
const square = good(squareJob({ paper: 'a4' }, null, sha256))
writeFileSync('square.pdf', (await writePdf(setInput(square.set, 'Test square'), platform)).bytes)
writeFileSync('offsets.csv', writeCsv(offsetsCells(good(offsetsJob(design)).offsets, design.units)))
const figures = figuresRecord(design, figuresJob(design))
writeFileSync('figures.json', JSON.stringify(figures))

const back = await readSetPdf(pdf.bytes, reading)
if ('fault' in back) throw new Error(back.fault.kind)
const here = back.pages.map(({ planned }) => planned.page)
const { numbers } = pickPages(back.plan, here, ['1', 'map'])
const pages = back.pages.filter(({ planned }) => numbers.includes(planned.page))
const job = good(reprintJob(back.plan, pages, pages.map((page) => pageContent(page, reading)), profile, sha256))
writeFileSync('again.pdf', await copyPdf(reprintInput(back, job), platform))
console.log(JSON.stringify({ set: set.code, again: job.plan.set, radius: figures.ramps[0].transition?.radius }))
`

it('a program is built with the packed tarball alone: from text to files and back', {
  timeout: 120_000,
}, async () => {
  const script = program.trim()
  writeFileSync(join(project, 'build.mjs'), script)
  const said = JSON.parse(execFileSync(process.execPath, ['build.mjs'], { cwd: project, encoding: 'utf8' }))
  // quarter-mm: the ridden face has 1700, its skin 24 more
  expect(said.radius).toEqual({ frame: 1724, surface: 1700 })
  const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(join(project, name)))
  const set = await readPdf(bytesOf('set.pdf'))
  expect(set.pages.length).toBeGreaterThan(5)
  const again = await readPdf(bytesOf('again.pdf'))
  expect(again.pages).toHaveLength(2)
  expect(said.again).not.toBe(said.set)
  expect((await readPdf(bytesOf('square.pdf'))).pages).toHaveLength(1)
  expect(readFileSync(join(project, 'offsets.csv'), 'utf8').split('\n').length).toBeGreaterThan(8)
  expect(JSON.parse(readFileSync(join(project, 'figures.json'), 'utf8')).ramps).toHaveLength(1)
})

it('its types are there: what is misused is refused, the rest is taken', () => {
  const check = (text: string): string => {
    writeFileSync(join(project, 'check.ts'), text)
    try {
      execFileSync(
        process.execPath,
        [
          resolve('node_modules/typescript/bin/tsc'),
          ...['--noEmit', '--strict', '--target', 'es2022', '--module', 'nodenext', 'check.ts'],
        ],
        { cwd: project, encoding: 'utf8', stdio: 'pipe' },
      )
      return ''
    } catch (error) {
      return (error as { stdout: string }).stdout
    }
  }
  const right = `import { readDesign, plotJob, usualLaying, isRefusal, type Plan } from 'traceply'
const read = readDesign('title: Boathouse')
if ('design' in read) {
  const job = plotJob(read.design, '', usualLaying('a4'), (text) => text)
  if (!isRefusal(job)) { const plan: Plan = job.set.plan; plan.expected[0]!.lip.likely.toFixed(1) }
}
`
  expect(check(right)).toBe('')
  expect(check(right.replace("usualLaying('a4')", "usualLaying('b5')"))).toContain(
    '\'"b5"\' is not assignable',
  )
})
