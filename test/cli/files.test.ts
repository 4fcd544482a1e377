import { execFileSync } from 'node:child_process'
import node, * as fs from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { Failure } from '../../src/cli/failure.ts'
import { checkOut, readText, writeOut } from '../../src/cli/files.ts'
import { saveProfile } from '../../src/cli/profiles.ts'
import { gaugeJob } from '../../src/job/proving/gauge.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { useFolder } from './reprint-run.ts'

/** What the disk is made to answer; nothing by itself. The tests may run as root, who may do everything. */
const disk = { link: '', open: '', rename: '', write: '' }

const { linkSync, openSync, renameSync, writeFileSync } = node
const own = { linkSync, openSync, renameSync, writeFileSync }
const fault = (code: string): Error => Object.assign(new Error(`${code}: as told`), { code })
const told = {
  linkSync: (...args: Parameters<typeof linkSync>) => {
    if (disk.link) throw fault(disk.link)
    linkSync(...args)
  },
  openSync: (...args: Parameters<typeof openSync>) => {
    if (disk.open) throw fault(disk.open)
    return openSync(...args)
  },
  renameSync: (...args: Parameters<typeof renameSync>) => {
    if (disk.rename) throw fault(disk.rename)
    renameSync(...args)
  },
  // a disk fills up halfway
  writeFileSync: (...[file, content, options]: Parameters<typeof writeFileSync>) => {
    if (disk.write) {
      writeFileSync(file, (content as string).slice(0, 3), options)
      throw fault(disk.write)
    }
    writeFileSync(file, content, options)
  },
} satisfies typeof own

/** In place of Node's own, for all that imported them by name. */
const put = (functions: typeof own): void => {
  Object.assign(node, functions)
  syncBuiltinESMExports()
}
beforeAll(() => put(told))
afterAll(() => put(own))

const { file, list, save } = useFolder()
beforeEach(() => Object.assign(disk, { link: '', open: '', rename: '', write: '' }))
afterEach(() => Object.assign(disk, { link: '', open: '', rename: '', write: '' }))

/** Exit and message of what must fail in a way that we know. */
const failure = (act: () => unknown): readonly [number, string] => {
  try {
    act()
  } catch (error) {
    if (error instanceof Failure) return [error.exit, error.message]
    throw error
  }
  throw new Error('did not fail')
}

const read = (name: string): string => fs.readFileSync(name, 'utf8')
const kept = (name: string): string =>
  `${name} exists and is kept; choose another name, or add --force to replace it`

describe('reading', () => {
  it('gives the text, without the mark that some editors put first', () => {
    expect(readText(save('a.yaml', '\uFEFFtitle: Ράμπα 🛹\n'))).toBe('title: Ράμπα 🛹\n')
    expect(readText(save('b.yaml', ''))).toBe('')
    const long = 'boathouse '.repeat(30_000)
    expect(readText(save('c.yaml', long))).toBe(long)
  })

  it.each([
    ['gone.yaml', 'there is no such file or folder'],
    ['a.yaml/b.yaml', 'a part of that path is a file, not a folder'],
    ['.', 'that is a folder'],
    [`${'x'.repeat(300)}.yaml`, 'that name is too long; choose a shorter one'],
    ['round', 'its links lead round in a circle'],
  ])('%s cannot be read', (name, why) => {
    save('a.yaml', 'title: x\n')
    fs.symlinkSync('round', file('round'))
    expect(failure(() => readText(file(name)))).toEqual([2, `cannot read ${file(name)}: ${why}`])
  })

  it.each([
    ['EACCES', 'you may not do that there; choose another folder or change its rights'],
    ['EIO', 'the disk reports a fault; choose another one'],
  ])('%s', (code, why) => {
    const path = save('ramp.yaml', 'title: x\n')
    disk.open = code
    expect(failure(() => readText(path))).toEqual([2, `cannot read ${path}: ${why}`])
  })

  it('an empty name', () => {
    expect(failure(() => readText(''))).toEqual([2, 'the name of the file to read is empty'])
  })

  it.each([
    ['UTF-16', Buffer.from('\uFEFFtitle: x\n', 'utf16le')],
    ['Latin-1', Buffer.from('title: für\n', 'latin1')],
    ['half a letter', Buffer.from('title: ü').subarray(0, 8)],
  ])('%s is not UTF-8', (_, bytes) => {
    const path = save('a.yaml', bytes)
    expect(failure(() => readText(path))).toEqual([
      1,
      `${path} is not text in UTF-8; save it as plain text in UTF-8`,
    ])
  })

  it('no more than 1 MB, even of what has no end', () => {
    const words = (path: string): string =>
      `${path} has more than 1024 kB, the most of a design: is it the right file?`
    const large = save('large.yaml', Buffer.alloc(1024 * 1024 + 1, '#'))
    expect(failure(() => readText(large))).toEqual([1, words(large)])
    expect(readText(save('just.yaml', Buffer.alloc(1024 * 1024, '#')))).toHaveLength(1024 * 1024)
    expect(failure(() => readText('/dev/zero'))).toEqual([1, words('/dev/zero')])
  })
})

describe('a place to write to', () => {
  it.each([
    ['no/set.pdf', (at: string) => `there is no folder ${join(at, 'no')}; make it first`],
    ['folder', () => 'that is a folder; add a file name'],
    ['folder/', () => 'that is a folder; add a file name'],
    ['new/', () => 'that is a folder; add a file name'],
    ['text/set.pdf', () => 'a part of that path is a file, not a folder'],
    ['text/no/set.pdf', () => 'a part of that path is a file, not a folder'],
    [`${'x'.repeat(300)}.pdf`, () => 'that name is too long; choose a shorter one'],
    ['pipe', () => 'that is a device or a pipe; give the name of a file'],
    ['to-pipe', () => 'that is a device or a pipe; give the name of a file'],
  ])('%s is refused, with and without --force', (name, why) => {
    fs.mkdirSync(file('folder'))
    save('text', 'mine')
    execFileSync('mkfifo', [file('pipe')])
    fs.symlinkSync('pipe', file('to-pipe'))
    const before = list()
    const at = file('.')
    const message = [2, `cannot write ${join(at, name)}: ${why(at)}`]
    // join drops no slash at the end
    for (const force of [false, true]) {
      expect(failure(() => checkOut(file(name), force))).toEqual(message)
      expect(failure(() => writeOut(file(name), 'new', force))).toEqual(message)
    }
    expect(list()).toEqual(before)
    expect(fs.statSync(file('pipe')).isFIFO()).toBe(true)
    expect(read(file('text'))).toBe('mine')
  })

  it('a name that Windows keeps for a device, there and nowhere else', () => {
    const { platform } = process
    for (const name of ['con.pdf', 'NUL', 'Com1.csv', 'lpt²'])
      try {
        checkOut(file(name), false)
        Object.defineProperty(process, 'platform', { value: 'win32' })
        expect(failure(() => checkOut(file(name), false))).toEqual([
          2,
          `cannot write ${file(name)}: Windows keeps that name for a device; choose another one`,
        ])
        expect(() => checkOut(file(`a${name}`), false)).not.toThrow()
      } finally {
        Object.defineProperty(process, 'platform', { value: platform })
      }
  })

  it('an empty name', () => {
    expect(failure(() => checkOut('', true))).toEqual([2, 'the name of the file to write is empty'])
  })

  it('a file that is there is kept, and replaced when forced', () => {
    const path = save('set.pdf', 'mine')
    expect(failure(() => checkOut(path, false))).toEqual([2, kept(path)])
    expect(failure(() => writeOut(path, 'new', false))).toEqual([2, kept(path)])
    expect(read(path)).toBe('mine')
    writeOut(path, 'new', true)
    expect(read(path)).toBe('new')
    expect(list()).toEqual(['set.pdf'])
  })

  it('never what is read, by whatever name', () => {
    const path = save('ramp.yaml', 'mine')
    fs.symlinkSync('ramp.yaml', file('soft'))
    fs.linkSync(path, file('hard'))
    for (const name of [path, `${file('.')}/./ramp.yaml`, file('soft'), file('hard')])
      for (const force of [false, true])
        expect(failure(() => checkOut(name, force, path))).toEqual([
          2,
          `cannot write ${name}: that is the file that is read; choose another name`,
        ])
    expect(() => checkOut(save('other', ''), true, path)).not.toThrow()
  })

  it('behind a link the file is replaced and the link stays', () => {
    fs.mkdirSync(file('stick'))
    fs.writeFileSync(file('stick/set.pdf'), 'old')
    fs.symlinkSync('stick/set.pdf', file('set.pdf'))
    writeOut(file('set.pdf'), 'new', true)
    expect(fs.lstatSync(file('set.pdf')).isSymbolicLink()).toBe(true)
    expect(read(file('stick/set.pdf'))).toBe('new')
    expect([...list(), ...fs.readdirSync(file('stick'))]).toEqual(['set.pdf', 'stick', 'set.pdf'])
  })

  it('a link that leads nowhere is kept, and replaced when forced', () => {
    fs.symlinkSync('nowhere', file('set.pdf'))
    expect(failure(() => writeOut(file('set.pdf'), 'new', false))).toEqual([2, kept(file('set.pdf'))])
    writeOut(file('set.pdf'), 'new', true)
    expect(read(file('set.pdf'))).toBe('new')
    expect(list()).toEqual(['set.pdf'])
  })

  it('the longest name that the disk takes', () => {
    const name = `${'x'.repeat(251)}.pdf`
    writeOut(file(name), 'new', false)
    writeOut(file(name), 'newer', true)
    expect(read(file(name))).toBe('newer')
    expect(list()).toEqual([name])
  })
})

describe('a write that fails leaves nothing, and what was there', () => {
  it.each([
    ['ENOSPC', 'the disk is full; make room or choose another one'],
    ['EDQUOT', 'your share of that disk is full; make room or choose another one'],
    ['EFBIG', 'that disk takes no file of this size; choose another one'],
    ['EIO', 'the disk reports a fault; choose another one'],
    ['EROFS', 'that disk can only be read; choose another folder'],
    ['EACCES', 'you may not do that there; choose another folder or change its rights'],
    ['EWHAT', 'the system says EWHAT'],
  ])('%s halfway', (code, why) => {
    const path = save('set.pdf', 'mine')
    disk.write = code
    expect(failure(() => writeOut(path, 'newer', true))).toEqual([2, `cannot write ${path}: ${why}`])
    expect(failure(() => writeOut(file('b.pdf'), 'newer', false))).toEqual([
      2,
      `cannot write ${file('b.pdf')}: ${why}`,
    ])
    expect(list()).toEqual(['set.pdf'])
    expect(read(path)).toBe('mine')
  })

  it('at the last step', () => {
    const path = save('set.pdf', 'mine')
    disk.rename = 'EBUSY'
    expect(failure(() => writeOut(path, 'newer', true))).toEqual([
      2,
      `cannot write ${path}: another program holds that file; close it there`,
    ])
    expect(list()).toEqual(['set.pdf'])
    expect(read(path)).toBe('mine')
  })
})

it('folders that were made for what could not be written are gone again, those that were there stay', () => {
  const gauged = gaugeJob('shed', { across: ['149mm'], down: ['150mm'] }, 'a4')
  if (isRefusal(gauged)) throw new Error('not gauged')
  fs.mkdirSync(file('there'))
  disk.write = 'ENOSPC'
  expect(failure(() => saveProfile(gauged, file('there/new/printers'), false))).toEqual([
    2,
    `cannot write ${file('there/new/printers/shed.json')}: the disk is full; make room or choose another one`,
  ])
  expect(fs.readdirSync(file('there'))).toEqual([])
  disk.write = ''
  expect(fs.existsSync(saveProfile(gauged, file('there/new/printers'), false))).toBe(true)
})

describe('a memory stick, which knows no links', () => {
  it.each(['EPERM', 'ENOTSUP', 'ENOSYS'])('%s: written all the same', (code) => {
    disk.link = code
    writeOut(file('set.pdf'), 'new', false)
    expect(read(file('set.pdf'))).toBe('new')
    expect(list()).toEqual(['set.pdf'])
  })

  it('a file that came meanwhile is kept', () => {
    fs.symlinkSync('nowhere', file('set.pdf'))
    disk.link = 'EPERM'
    expect(failure(() => writeOut(file('set.pdf'), 'new', false))).toEqual([2, kept(file('set.pdf'))])
    expect(list()).toEqual(['set.pdf'])
  })

  it('the name that was taken is given back when the last step fails', () => {
    Object.assign(disk, { link: 'EPERM', rename: 'EIO' })
    expect(failure(() => writeOut(file('set.pdf'), 'new', false))).toEqual([
      2,
      `cannot write ${file('set.pdf')}: the disk reports a fault; choose another one`,
    ])
    expect(list()).toEqual([])
  })
})
