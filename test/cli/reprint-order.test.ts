import { PDFArray, PDFDict, PDFDocument, PDFName } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../support/random.ts'
import { bytesOf, planOf, rawContents, useFolder, withCatalog } from './reprint-run.ts'

const { plot, reprint, save } = useFolder()

/** The same pages in another order, labels with them, as programs that sort pages leave them. */
const inOrder = (bytes: Uint8Array, order: readonly number[]): Promise<Uint8Array> =>
  withCatalog(bytes, (catalog, doc) => {
    const tree = catalog.lookup(PDFName.of('Pages'), PDFDict)
    const kids = tree.lookup(PDFName.of('Kids'), PDFArray).asArray().slice()
    tree.set(PDFName.of('Kids'), doc.context.obj(order.map((at) => kids[at]!)))
    tree.set(PDFName.of('Count'), doc.context.obj(order.length))
    const labels = catalog.lookup(PDFName.of('PageLabels'), PDFDict)
    const nums = labels.lookup(PDFName.of('Nums'), PDFArray)
    const own = order.flatMap((at, i) => [doc.context.obj(i), nums.get(2 * at + 1)])
    const sorted = PDFArray.withContext(doc.context)
    for (const item of own) sorted.push(item)
    labels.set(PDFName.of('Nums'), sorted)
  })

describe('whatever the order of its pages, a set gives the page that is asked for', () => {
  it.each(['swapped', 'reversed', 'shuffled', 'doubled', 'thinned'])('%s', async (how) => {
    const path = await plot('quarter-mm', '--paper', 'a4', '--cover', 'line')
    const bytes = bytesOf(path)
    const { pages } = await planOf(bytes)
    const all = pages.map((_: unknown, i: number) => i) as number[]
    const random = randomFrom(7)
    const orders: Readonly<Record<string, readonly number[]>> = {
      swapped: all.map((i) => (i === 3 ? 4 : i === 4 ? 3 : i)),
      reversed: [...all].reverse(),
      shuffled: all
        .map((i) => ({ i, at: random() }))
        .sort((a, b) => a.at - b.at)
        .map(({ i }) => i),
      doubled: all.flatMap((i) => (i % 3 === 0 ? [i, i] : [i])),
      thinned: all.filter((i) => i % 4 !== 1),
    }
    const order = orders[how]!
    const moved = save('moved.pdf', await inOrder(bytes, order))
    const contents = await rawContents(bytes)
    expect((await PDFDocument.load(bytesOf(moved))).getPageCount()).toBe(order.length)
    let tiles = 0
    for (const page of pages as { page: number; kind: string; tile?: string }[]) {
      if (page.kind !== 'tile' || !order.includes(page.page - 1)) continue
      tiles++
      const again = await reprint(moved, page.tile!)
      expect(await rawContents(again), page.tile).toEqual([contents[page.page - 1]])
      expect((await planOf(again)).reprint).toEqual([page.page])
    }
    expect(tiles).toBeGreaterThan(3)
    const held = (pages as { page: number; tile?: string }[])
      .filter(({ page, tile }) => tile && order.includes(page - 1))
      .slice(0, 3)
      .map(({ tile }) => tile!)
    expect(held).toHaveLength(3)
    expect(await reprint(moved, ...held)).toEqual(await reprint(path, ...held))
  })
})
