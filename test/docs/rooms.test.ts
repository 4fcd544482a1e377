import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { basename, join, relative } from 'node:path'
import { expect, it } from 'vitest'

const text = readFileSync(new URL('../../docs/architecture.md', import.meta.url), 'utf8')
const rooms = text.split('## The rooms\n')[1]!.split('### The plan')[0]!
const picture = rooms.split('```')[1]!

const foldersIn = (path: string): readonly string[] =>
  readdirSync(path, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? [join(path, entry.name), ...foldersIn(join(path, entry.name))] : [],
  )

it('the picture of the rooms shows every folder of src and every room in it', () => {
  const all = foldersIn('src').filter((folder) => relative('src', folder).split(/[\\/]/).length <= 2)
  expect(all.length).toBeGreaterThan(40)
  const words = new Set(picture.match(/[a-z][\w-]*/g))
  expect(all.map((folder) => basename(folder)).filter((name) => !words.has(name))).toEqual([])
})

it('and no room that is not there', () => {
  const rows = picture.split('\n').flatMap((line) => {
    const [folder, row] = /^ {2}(\w+) +(.*)$/.exec(line)?.slice(1) ?? []
    const own = (row ?? '').split(/ {3,}/)[0]!.split(/ [·◄] /)
    return own.length > 1 ? own.map((room) => join('src', folder!, room)) : []
  })
  expect(rows.length).toBeGreaterThan(25)
  expect(rows.filter((room) => !existsSync(room))).toEqual([])
})

it('files that are named among the rooms are there', () => {
  const files = [...rooms.matchAll(/`(src\/[\w/-]+\.ts)`/g)].map((match) => match[1]!)
  expect(files.length).toBeGreaterThan(20)
  expect(files.filter((file) => !existsSync(file))).toEqual([])
})
