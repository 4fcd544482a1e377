import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readDesign } from '../../../src/design/read.ts'
import type { Drawing, Mark } from '../../../src/drawing/drawing.ts'
import { type TextMark, textCorners } from '../../../src/drawing/text-box.ts'
import { affineIdentity } from '../../../src/geometry/affine.ts'
import { type Box, boxOverlaps, pathBounds, pointsBounds } from '../../../src/geometry/bounds.ts'
import { stripBlock } from '../../../src/page/parts/strip-block.ts'
import { type StripPiece, stripPieces } from '../../../src/page/parts/strip-pieces.ts'
import { letters } from '../../../src/pattern/pens.ts'
import { rampStrips } from '../../../src/pattern/ramp-strips.ts'
import { job } from '../../ramp/framed.ts'
import { piped, plain, sawnSeed, wholeOf } from '../../ramp/ramps.ts'
import { above, below } from '../../support/hold.ts'
import { assertNear } from '../../support/near.ts'
import { templateText } from '../../support/templates.ts'
import { wholeDesign } from '../../support/whole.ts'

const set = 'BCDF-GHJK-2345'
const room = fc.constantFrom(271, 190, 254, 148)

const texts = (drawing: Drawing): readonly TextMark[] =>
  drawing.filter((mark): mark is TextMark => mark.kind === 'text')
/** Words of marks have no letters that reach below their line but the j of a joint. */
const boxOf = (mark: TextMark): Box => {
  const box = pointsBounds(textCorners(mark, affineIdentity))
  return mark.layer === 'mark' ? { ...box, y0: mark.at.y } : box
}
const strokes = (drawing: Drawing): readonly Extract<Mark, { kind: 'stroke' }>[] =>
  drawing.filter((mark) => mark.kind === 'stroke')

/** How many mm two boxes reach into each other, either way. */
const depth = (a: Box, b: Box): number => Math.min(a.x1 - b.x0, b.x1 - a.x0, a.y1 - b.y0, b.y1 - a.y0)

const forPieces = (
  runs: number,
  check: (piece: StripPiece, drawing: Drawing, room: number) => void,
): void => {
  fc.assert(
    fc.property(job, room, ({ design, panel, units }, long) => {
      for (const strip of rampStrips(wholeOf(design, units, panel), units))
        for (const piece of stripPieces(strip, long)) check(piece, stripBlock(piece, set).draw(), long)
    }),
    { numRuns: runs, seed: sawnSeed, endOnFailure: true },
  )
}

it('no words of a piece lie over others, over a tick, a ring or a joint, or at the line where it is cut out', () => {
  let compared = 0
  let crowded = 0
  forPieces(60, ({ strip }, drawing) => {
    const said = texts(drawing).map((mark) => ({ mark, box: boxOf(mark) }))
    const frame = strokes(drawing)[0]!
    const outer = pathBounds(frame.path)
    const others = strokes(drawing)
      .filter((one) => one !== frame)
      .map(({ path }) => pathBounds(path))
    const boxes = [...said.map(({ box }) => box), ...others]
    said.forEach(({ mark, box }, i) => {
      const what = `${strip.name}: ${mark.text}`
      above(Math.min(box.y0 - outer.y0, outer.y1 - box.y1), 0.45, what)
      above(Math.min(box.x0 - outer.x0, outer.x1 - box.x1), 0, what)
      for (let j = i + 1; j < boxes.length; j++) {
        const other = boxes[j]!
        compared++
        if (!boxOverlaps(box, other)) continue
        // where marks crowd, a stud keeps its name all the same
        if (mark.layer === 'mark' && depth(box, other) > 0) crowded++
        else expect.fail(`${what} lies over something`)
      }
    })
  })
  expect(compared).toBeGreaterThan(100_000)
  expect(crowded / compared).toBeLessThan(1e-4)
})

it('white shows between a ring and the words past it', () => {
  let rings = 0
  forPieces(10, ({ strip }, drawing) => {
    const words = texts(drawing).filter(({ layer }) => layer === 'mark')
    for (const { layer, path, pen } of strokes(drawing)) {
      const ring = pathBounds(path)
      const [wide, high] = [ring.x1 - ring.x0, ring.y1 - ring.y0]
      if (layer !== 'mark' || wide < 1 || Math.abs(wide - high) > 0.01) continue
      rings++
      const line = pen.width / 2
      for (const mark of words) {
        const box = boxOf(mark)
        const past = box.x0 < ring.x1 && box.x1 > ring.x0
        if (past)
          above(Math.max(box.y0 - ring.y1, ring.y0 - box.y1) - line, 0.25, `${strip.name}: ${mark.text}`)
      }
    }
  })
  expect(rings).toBeGreaterThan(50)
})

it('each piece names its strip, its place in it, the set and its edges', () => {
  const count = { pieces: 0, edges: 0, bare: 0, long: 0, usual: 0, large: 0 }
  forPieces(40, ({ strip, number, count: of, from, to }, drawing, long) => {
    const said = texts(drawing)
    const words = said.map(({ text }) => text)
    count.pieces++
    expect(words, strip.name).toContain(`set ${set}`)
    const name = words.find((one) => one.includes(strip.what) && !one.includes('piece') === (of === 1))
    const brief = words.find((one) => one === `${strip.what} · ${number} of ${of}`)
    const place = of > 1 ? ` · piece ${number} of ${of}` : ''
    expect(brief ?? name, strip.name).toBe(brief ?? `${strip.ramps} · ${strip.what}${place}`)
    const large = said.filter(({ text, size }) => text === name && size >= 2.4).length
    // a long piece has room for its name in large letters, whatever else it says
    if (to - from >= 180) {
      expect(large, `${strip.name} ${number}`).toBe(1)
      count.long++
    }
    // most others have too, but on paper narrower than A4
    if (long >= 190) {
      count.usual++
      count.large += large
    }
    const height = pathBounds(strokes(drawing)[0]!.path).y1
    strip.rows.forEach((row, i) => {
      if (!row || row.edge === '') return
      const names = said.filter(({ text, face }) => text.startsWith(row.edge) && face === 'bold')
      if (names.length === 0) count.bare++
      count.edges++
      for (const { at, size } of names)
        expect(at.y + size / 2 > height / 2, `${strip.name} ${row.edge}`).toBe(i === 0)
    })
  })
  expect(count.pieces).toBeGreaterThan(400)
  expect(count.bare / count.edges).toBeLessThan(0.005)
  expect(count.long).toBeGreaterThan(200)
  expect(count.large / count.usual).toBeGreaterThan(0.88)
})

it('where two pieces meet, the later says on which line it is laid, the earlier which covers it, and both carry one cross', () => {
  let joints = 0
  const arms = (piece: StripPiece, drawing: Drawing, joint: number): readonly string[] =>
    strokes(drawing)
      .filter(({ layer, path }) => layer === 'joint' && path.start.x !== path.pieces[0]!.to.x)
      .map(({ path }) => [path.start, path.pieces[0]!.to])
      .filter((ends) => ends.some(({ x }) => Math.abs(x + piece.from - 6 - joint) < 4))
      .map((ends) =>
        ends.map(({ x, y }) => `${(x + piece.from - 6 - joint).toFixed(3)} ${y.toFixed(3)}`).join(),
      )
  fc.assert(
    fc.property(job, room, ({ design, panel, units }, long) => {
      for (const strip of rampStrips(wholeOf(design, units, panel), units)) {
        const pieces = stripPieces(strip, long).map((piece) => ({
          piece,
          drawing: stripBlock(piece, set).draw(),
        }))
        pieces.slice(1).forEach(({ piece, drawing }, i) => {
          joints++
          const before = pieces[i]!
          const words = texts(drawing).map(({ text }) => text)
          const said = words.filter((one) => one.includes(` on the dashed line of piece ${i + 1}`))
          if (piece.to - piece.from > 107) expect(said.length, strip.name).toBe(1)
          else expect(words.join(), strip.name).toMatch(new RegExp(`lay .*piece ${i + 1}`))
          const crosses = [arms(before.piece, before.drawing, piece.from), arms(piece, drawing, piece.from)]
          expect(crosses[0]!.length).toBe(2)
          expect(crosses[0]).toEqual(crosses[1])
        })
      }
    }),
    { numRuns: 40, seed: sawnSeed, endOnFailure: true },
  )
  expect(joints).toBeGreaterThan(300)
})

it('a piece without a mark says that it keeps the length', () => {
  const count = { blank: 0, marked: 0 }
  forPieces(40, ({ strip, from, to, number, count: of }, drawing) => {
    const words = texts(drawing).map(({ text }) => text)
    const marks = strip.rows.flatMap((row) => row?.marks ?? [])
    const own = marks.filter(({ at }) => at >= from && (at < to || number === of)).length
    const blank = words.some((one) => /no mark.*: keeps the length/.test(one))
    if (own > 0 || to - from > 140) expect(blank, `${strip.name} ${number}`).toBe(own === 0)
    count[blank ? 'blank' : 'marked']++
  })
  expect(count.blank).toBeGreaterThan(5)
  expect(count.marked).toBeGreaterThan(200)
})

it('nothing on a piece is smaller than 8 pt', () => {
  let seen = 0
  // a capital of the face is 698 of 1000 high, a point is 25.4 / 72 mm
  const least = (8 * 25.4 * 0.698) / 72
  forPieces(40, (_, drawing) => {
    for (const { text, size } of texts(drawing)) {
      seen++
      above(size, least, text)
    }
  })
  expect(seen).toBeGreaterThan(5000)
})

it('beside each stud stands how far it lies from zero, on either edge its own', () => {
  let seen = 0
  const ramp = wholeOf(plain)
  const strip = rampStrips(ramp, 'mm').find(({ name }) => name === 'ramp/strip-1')!
  const { frame } = ramp.transition.radius
  for (const piece of stripPieces(strip, 271)) {
    const drawing = stripBlock(piece, set).draw()
    for (const { text, at } of texts(drawing)) {
      const found = /^stud (\d+) · ([\d.]+)$/.exec(text)
      if (!found) continue
      seen++
      // arcs of one angle: 4.5 and 9 mm inside the frame
      const angle = ramp.studs[Number(found[1]) - 1]!.at / frame
      const expected = angle * (frame - (at.y > 10 ? 4.5 : 9))
      below(Math.abs(Number(found[2]) - expected), 0.051, text)
    }
  }
  expect(seen).toBe(2 * ramp.skin[0]!.marks.length)
})

it('hardly any mark goes without its distance from zero', () => {
  const count = { with: 0, without: 0 }
  forPieces(60, ({ strip, from, to, number, count: of }, drawing) => {
    const said = texts(drawing)
      .filter(({ layer }) => layer === 'mark')
      .map(({ text }) => text)
    for (const row of strip.rows)
      for (const { at, label, figure } of row?.marks ?? []) {
        if (at < from || !(at < to || number === of) || label === null) continue
        const words = figure === null ? label : `${label} · ${figure}`
        if (said.includes(words)) count.with++
        else count.without++
      }
  })
  expect(count.with).toBeGreaterThan(5000)
  expect(count.without / count.with).toBeLessThan(0.02)
})

it('each joint is named by both of its pieces on each of the two', () => {
  let [looked, named] = [0, 0]
  forPieces(40, ({ number, count }, drawing) => {
    const words = texts(drawing).map(({ text }) => text)
    const pair = (low: number): boolean => words.some((one) => one.startsWith(`${low}–${low + 1}`))
    for (const low of [...(number === 1 ? [] : [number - 1]), ...(number === count ? [] : [number])]) {
      looked++
      if (pair(low)) named++
    }
    // and no joint that it does not have
    expect(pair(number === 1 ? 0 : count)).toBe(false)
  })
  expect(looked).toBeGreaterThan(300)
  // a short or crowded piece says less
  expect(named / looked).toBeGreaterThan(0.8)
})

it('where marks crowd a distance stands without its name, and hardly any words run over a joint', () => {
  const count = { figures: 0, missing: 0, pieces: 0, over: 0 }
  forPieces(100, ({ strip, from, to, number, count: of }, drawing) => {
    const said = texts(drawing).filter(({ layer }) => layer === 'mark')
    const joints = strokes(drawing)
      .filter(({ layer, path }) => layer === 'joint' && path.start.x === path.pieces[0]!.to.x)
      .map(({ path }) => path.start.x)
    count.pieces++
    if (said.some((one) => joints.some((x) => boxOf(one).x0 < x && x < boxOf(one).x1))) count.over++
    for (const row of strip.rows)
      for (const { at, label, figure } of row?.marks ?? []) {
        if (at < from || !(at < to || number === of) || label === null || figure === null) continue
        count.figures++
        if (!said.some(({ text }) => text === figure || text.endsWith(` · ${figure}`))) count.missing++
      }
  })
  expect(count.figures).toBeGreaterThan(4000)
  expect(count.missing / count.figures).toBeLessThan(0.004)
  expect(count.over / count.pieces).toBeLessThan(0.003)
})

it('beside its name an edge says for which row its marks do not hold, on the pieces where they do not', () => {
  const deep = ['9 plywood', '9 plywood', '6 hardboard', '3 hardboard', '3 hardboard', '3 hardboard']
  const reading = readDesign(templateText('quarter-mm').replace(/skin: .*/, `skin: [${deep.join(', ')}]`))
  if ('problems' in reading) throw new Error(JSON.stringify(reading.problems))
  const count = { pieces: 0, unlike: 0 }
  for (const ramp of wholeDesign(reading.design).ramps)
    for (const strip of rampStrips(ramp, 'mm').filter(({ kind }) => kind === 'across'))
      for (const piece of stripPieces(strip, 190)) {
        const said = texts(stripBlock(piece, set).draw()).map(({ text }) => text)
        const on = (at: number): boolean => at >= piece.from && at <= piece.to
        for (const row of strip.rows) {
          const [, stud, own, usual] =
            /but at stud (\d+): ([\d., ]+) in place of ([\d., ]+)$/.exec(row!.words) ?? []
          const unlike = stud !== undefined && `${own}, ${usual}`.split(', ').map(Number).some(on)
          count.pieces++
          if (unlike) count.unlike++
          expect(said, `${strip.name} ${piece.number}`).toContain(
            unlike ? `${row!.edge}, not at stud ${stud}` : row!.edge,
          )
        }
      }
  expect(count.unlike).toBeGreaterThan(4)
  expect(count.pieces).toBeGreaterThan(2 * count.unlike)
})

it('on a short last piece the lines stand apart, and the note ends before the code', () => {
  const ramp = wholeOf({ ...plain, width: 2400, coping: piped() })
  const whole = rampStrips(ramp, 'mm').find(({ kind, rows }) => kind === 'across' && rows.length === 1)!
  // its last piece is 94 mm long
  const last = stripPieces(whole, 271).at(-1)!
  const said = texts(stripBlock({ ...last, from: last.to - 94 }, set).draw())
  const [name, note, code] = ['bold', 'lay ', 'set '].map((form) =>
    said.find(({ layer, text, face }) => layer === 'note' && (face === form || text.includes(form))),
  )
  // 0.9 mm of white at the least between the letters of two lines
  assertNear(name!.at.y - note!.at.y - letters.mark, 0.9, 1e-9)
  above(boxOf(code!).x0 - boxOf(note!).x1, 3.9, note!.text)
})

it('a strip of one edge names it and says which piece covers which, as one of two does', () => {
  const ramp = wholeOf({ ...plain, width: 4400, coping: piped() })
  const single = rampStrips(ramp, 'mm').filter(({ rows }) => rows.length === 1)
  expect(single.map(({ kind }) => kind)).toEqual(['across', 'pipe'])
  const count = { pieces: 0, named: 0, covered: 0 }
  for (const strip of single)
    for (const piece of stripPieces(strip, 190)) {
      const said = texts(stripBlock(piece, set).draw())
      const under = said.filter(({ text }) => /^under \d+$/.test(text)).map(({ text }) => text)
      count.pieces++
      if (said.some(({ text, face }) => face === 'bold' && text === strip.rows[0].edge)) count.named++
      // no words where those of a mark at the joint stand
      if (under.length > 0) {
        expect(under).toEqual([`under ${piece.number + 1}`])
        expect(piece.number).toBeLessThan(piece.count)
      }
      if (under.length > 0 || piece.number === piece.count) count.covered++
    }
  expect(count.pieces).toBeGreaterThan(40)
  expect(count.named).toBe(count.pieces)
  expect(count.covered / count.pieces).toBeGreaterThan(0.9)
})
