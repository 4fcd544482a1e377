import { describe, expect, test } from 'vitest'
import { sectionNames } from '../../src/booklet/book/booklet.ts'
import { cutsText } from '../../src/booklet/cuts/cuts-text.ts'
import { listText } from '../../src/booklet/list/list-text.ts'
import { stockLines, stockRows } from '../../src/booklet/stock-rows.ts'
import { checkLetters } from '../../src/booklet/views/checks-view.ts'
import { sectionNumber, timbersOf } from '../../src/booklet/views/plan-view.ts'
import type { Design } from '../../src/design/design.ts'
import type { Drawing } from '../../src/drawing/drawing.ts'
import { type BookletJob, bookletInput, bookletJob } from '../../src/job/booklet.ts'
import { buyJob } from '../../src/job/buy.ts'
import { cutsJob, cutsRecord } from '../../src/job/cuts.ts'
import { figuresJob, figuresRecord } from '../../src/job/figures.ts'
import { usualLaying } from '../../src/job/laying.ts'
import { isRefusal } from '../../src/job/refusal.ts'
import { showLength } from '../../src/length.ts'
import { sheetWindow } from '../../src/page/sheet/sheet.ts'
import { writePdf } from '../../src/write/pdf.ts'
import { designOf } from '../support/design-of.ts'
import { overlaps } from '../support/overlaps.ts'
import { platform } from '../support/platform.ts'
import type { PdfText } from '../support/read-page.ts'
import { readPdf } from '../support/read-pdf.ts'
import { templates, templateText } from '../support/templates.ts'
import { jobOf } from '../tape-up/jobs.ts'

const fingerprint = (): string => '0123456789abcdef'
const papers = ['letter', 'a4'] as const

type Paper = (typeof papers)[number]

const bookAnew = (design: Design, paper: Paper, only: readonly string[] | null) => {
  const laying = usualLaying(paper)
  return { laying, job: bookletJob(design, laying, { only, fingerprint }) }
}

const books = new Map<string, ReturnType<typeof bookAnew>>()

/** Laid once for all that read it. */
const book = (design: Design, paper: Paper, only: readonly string[] | null = null) => {
  const key = JSON.stringify([design, paper, only])
  const laid = books.get(key) ?? bookAnew(design, paper, only)
  books.set(key, laid)
  return laid
}

const made = (design: Design, paper: Paper, only: readonly string[] | null = null) => {
  const { laying, job } = book(design, paper, only)
  if (isRefusal(job)) throw new Error(JSON.stringify(job))
  return { laying, job }
}

describe('the booklet', () => {
  test('has no words on words, no line in words, and nothing off the page: all templates and designs as builders write them', () => {
    let [books, pages, words] = [0, 0, 0]
    const texts = [
      ...templates.map(templateText),
      // bays too narrow for their figure; sides lower than the axis that they are turned over; a saw that stops beside its guide's end
      ...[117, 17, 201, 76].map((i) => jobOf(i).text),
    ]
    // the smaller ones on either paper, the larger ones on one of them
    for (const [i, text] of texts.entries())
      for (const paper of text.length < 2400 ? papers : [papers[i % 2]!]) {
        const { laying, job } = book(designOf(text), paper)
        if (isRefusal(job)) continue
        books++
        for (const { drawing, title } of job.pages) {
          const found = overlaps(drawing, sheetWindow(laying.sheet))
          expect(found.faults, `${title}\n${text}`).toEqual([])
          pages++
          words += found.words
        }
      }
    expect(books).toBeGreaterThanOrEqual(9)
    expect(pages).toBeGreaterThan(10 * books)
    expect(words).toBeGreaterThan(500 * books)
  }, 120_000)

  test('a line drawn through its words is noticed', () => {
    const { job } = made(designOf(templateText('quarter-mm')), 'a4', ['care'])
    const { drawing } = job.pages[0]!
    const line = {
      start: { x: 20, y: 286 },
      pieces: [{ kind: 'line', to: { x: 60, y: 286 } }],
      closed: false,
    } as const
    const spoilt = [...drawing, { kind: 'stroke', layer: 'note', path: line, pen: { width: 0.2 } } as const]
    expect(overlaps(drawing).faults).toEqual([])
    expect(overlaps(spoilt).faults.length).toBeGreaterThan(0)
  })

  test('says on each page what it belongs to, its number and the set code of the plot', () => {
    const { job } = made(designOf(templateText('quarter-and-flat-in')), 'letter')
    job.pages.forEach(({ drawing }, i) => {
      const said = drawing.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
      expect(said).toContain(`${i + 1} of ${job.pages.length}`)
      expect(said).toContain('Boathouse quarter and flat')
      expect(said.some((words) => /^[B-Z2-9]{4}$/.test(words))).toBe(true)
    })
  })

  test('has the parts of the design in the order of the day, and those alone that are asked for', () => {
    const begun = ({ job }: { readonly job: BookletJob }) =>
      job.pages.flatMap(({ begins }) => begins.map(({ name }) => name))
    const design = designOf(templateText('quarter-and-flat-mm'))
    expect(begun(made(design, 'a4'))).toEqual(sectionNames)
    expect(begun(made(design, 'a4', ['framing', 'cutting']))).toEqual(['cutting', 'framing'])
    // one quarter has no flat
    expect(begun(made(designOf(templateText('quarter-mm')), 'a4'))).toEqual(
      sectionNames.filter((name) => name !== 'flat'),
    )
    expect(isRefusal(book(designOf(templateText('quarter-mm')), 'a4', ['flat']).job)).toBe(true)
  })
})

/** Every number of the figures, mm, degrees and counts, wherever it stands. */
const numbersOf = (value: unknown): readonly number[] =>
  typeof value === 'number'
    ? [value]
    : Array.isArray(value)
      ? value.flatMap(numbersOf)
      : value !== null && typeof value === 'object'
        ? Object.values(value).flatMap(numbersOf)
        : []

/** What stands in the words themselves, whatever the design: thresholds, drills, the way to print, scales. */
const fixedWords = [
  /30\s+in\s+\(762\s+mm\)/g,
  /100\s+%/g,
  /millimetre\s+\(1\/32\s+in\)/g,
  /\+\s+is\s+1\/32\s+more\s+and\s+–\s+is\s+1\/32\s+less/g,
  /1\/2\+\s+is\s+17\/32,\s+1\/2–\s+is\s+15\/32/g,
  /^.*1 : \d+$/gm,
  /[\d /]+ in = 1 ft$/gm,
  /^\d+ of \d+$/gm,
]

/** Grits, radii of edges, what may be off: the same for every ramp. */
const finishingFigures = ['80', '120', '3', '15', '1/8', '1/2', '1', '2', '1/32', '1/16']

/** Figures in a text, as a builder reads them. */
const figuresIn = (text: string): readonly string[] => {
  const bare = fixedWords.reduce((all, form) => all.replace(form, ' '), text)
  return [...bare.matchAll(/(?<![\dA-Z./-])(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)[+–]?/g)].map(
    (found) => found[0],
  )
}

/** The texts of a page, one a line; a fraction joined to the inches before it, which a table sets apart. */
const linesOf = (texts: readonly PdfText[]): string =>
  texts
    .map(({ text, x, y }, i) => {
      const before = texts[i - 1]
      const joined =
        before !== undefined &&
        Math.abs(before.y - y) < 0.01 &&
        x > before.x &&
        x - before.x - before.width < 4
      return `${!joined ? '\n' : /^[+–]$/.test(text) ? '' : /^\d/.test(text) ? ' ' : '\n'}${text}`
    })
    .join('')

/** Whole kg or pounds, least and most. */
const massFigures = (
  { least, most }: { readonly least: number; readonly most: number },
  units: Design['units'],
): readonly string[] => {
  const by = units === 'mm' ? 1 : 0.45359237
  return [`${Math.floor(least / by)}`, `${Math.ceil(most / by)}`]
}

type Figures = ReturnType<typeof figuresRecord>

/** What a builder checks on the wood, by closed forms from the figures: chord of the curve that is sawn and its rise, diagonals. */
const checksOf = ({ ramps }: Figures): readonly number[] =>
  ramps.flatMap(({ transition, heights, length, coping }) => {
    // both diagonals of a flat's side
    if (!transition && heights && length !== null) return [Math.hypot(length, heights.frame!)]
    if (!transition || !heights || length === null) return []
    const { centre, radius, toeAngle, lipAngle, run } = transition
    const toe = centre[1]! - radius.frame * Math.cos((toeAngle * Math.PI) / 180)
    const end = mouthAngle(coping, { centre, radius, frame: heights.frame! }) ?? (lipAngle * Math.PI) / 180
    const half = (end - (toeAngle * Math.PI) / 180) / 2
    return [
      toe,
      2 * radius.frame * Math.sin(half),
      radius.frame * (1 - Math.cos(half)),
      Math.hypot(length, heights.frame!),
      Math.hypot(length, heights.frame! - toe),
      ...notchOf(coping, { centre, radius, run, frame: heights.frame!, length }),
    ]
  })

/** Of a back corner that is cut at 45°: along the bottom edge to it, and the cut itself, by its leg in the design. */
const cornersOf = ({ ramps }: Design, record: Figures): readonly number[] =>
  ramps.flatMap((ramp, i) => {
    const { length } = record.ramps[i]!
    if (ramp.kind !== 'quarter' || ramp.chamfer === 0 || length === null) return []
    return [length - ramp.chamfer, Math.hypot(ramp.chamfer, ramp.chamfer)]
  })

/** Of strips under a run-out, at even angles of the ridden circle and 100 mm (4 in) apart at most: before the toe, and over the floor. */
const stripsOf = ({ ramps }: Figures, units: Design['units']): readonly number[] =>
  ramps.flatMap(({ transition }) => {
    if (!transition) return []
    const { centre, radius, toeAngle, bridge } = transition
    const bays = Math.ceil(bridge / (units === 'mm' ? 100 : 101.6))
    return Array.from({ length: bays }, (_, i) => {
      const angle = (toeAngle * Math.PI) / 180 - (bridge * i) / bays / radius.surface
      return [-centre[0]! - radius.surface * Math.sin(angle), centre[1]! - radius.surface * Math.cos(angle)]
    }).flat()
  })

/** Of a flat's loops of rope: holes 65 mm to either side of the middle of its second bay, as the first has a plate's bolts; half its height up. */
const loopsOf = ({ ramps }: Figures): readonly number[] =>
  ramps.flatMap(({ transition, heights, studs }) => {
    const [, first, second] = studs.map(({ at }) => at)
    if (transition || !heights || first === undefined || second === undefined) return []
    return [(first + second) / 2 - 65, (first + second) / 2 + 65, heights.frame! / 2]
  })

/** From below the centre to where the circle meets the notch, radians: at its floor's height, or so far from the pipe's middle (law of cosines). */
const mouthAngle = (
  coping: Figures['ramps'][number]['coping'],
  { centre, radius, frame }: Pick<Parameters<typeof notchOf>[1], 'centre' | 'radius' | 'frame'>,
): number | null => {
  if (!coping) return null
  const [x, y] = [centre[0]!, centre[1]!]
  if (coping.notch.seat === 'square') return Math.acos((y - (frame - coping.notch.down)) / radius.frame)
  const [px, py] = [coping.centre[0]!, coping.centre[1]!]
  const far = Math.hypot(px - x, py - y)
  const r = coping.outside / 2
  const apart = Math.acos((radius.frame ** 2 + far ** 2 - r ** 2) / (2 * radius.frame * far))
  return Math.atan2(px - x, y - py) - apart
}

/** Wall from the back edge, floor from the bottom edge, along the floor from the wall to the circle. */
const notchOf = (
  coping: Figures['ramps'][number]['coping'],
  side: {
    readonly centre: readonly number[]
    readonly radius: { readonly frame: number }
    readonly run: number
    readonly frame: number
    readonly length: number
  },
): readonly number[] => {
  if (!coping) return []
  const { seat, along, down } = coping.notch
  const wall = side.run + along
  const floor = side.frame - down
  const [x, y] = side.centre as readonly [number, number]
  const mouth = x + Math.sqrt(side.radius.frame ** 2 - (y - floor) ** 2)
  return [side.length - wall, floor, ...(seat === 'square' ? [wall - mouth] : [])]
}

describe('the numbers of the booklet', () => {
  /** Those of a PDF that are neither figures of the design, nor of its parts, nor counts. */
  const unknown = async (name: string, figuresOf = name) => {
    const design = designOf(templateText(name))
    const { units } = design
    const { laying, job } = made(design, 'a4')
    const { bytes } = await writePdf(bookletInput(design, job, laying.sheet), platform)
    const { pages } = await readPdf(bytes)
    const other = designOf(templateText(figuresOf))
    const record = figuresRecord(other, figuresJob(other))
    const sheets = record.ramps.flatMap(({ skin, deckBoard }) => [...skin, ...(deckBoard ? [deckBoard] : [])])
    const cuts = cutsJob(other)
    if (isRefusal(cuts)) throw new Error(JSON.stringify(cuts))
    const panels = cutsRecord(other, cuts).panels
    const buy = buyJob(other)
    if (isRefusal(buy)) throw new Error(JSON.stringify(buy))
    const { stock } = buy.facts
    // what each piece takes of its panel
    const sawn = panels.flatMap(({ pieces }) =>
      pieces.flatMap(({ outline }) =>
        [0, 1].map((axis) => {
          const along = outline.map((p) => p[axis]!)
          return Math.max(...along) - Math.min(...along)
        }),
      ),
    )
    const known = new Set([
      ...[
        ...numbersOf(record),
        ...numbersOf(other),
        ...checksOf(record),
        ...cornersOf(other, record),
        ...loopsOf(record),
        ...stripsOf(record, units),
        ...numbersOf(panels),
        ...sawn,
      ].flatMap((value) => [
        showLength(value, units),
        showLength(value, units, { decimals: 1 }),
        value.toFixed(1),
        ...(Number.isInteger(value) ? [`${value}`] : []),
      ]),
      ...record.checks.flatMap(({ message }) => figuresIn(message)),
      ...figuresIn(cutsText(other, cuts.sheets, cuts.boards)),
      ...figuresIn(listText(buy.facts)),
      ...other.ramps.flatMap(({ name: ramp }) =>
        stockRows(ramp, stock, other.units).flatMap(([, words]) => figuresIn(words)),
      ),
      ...stockLines(stock, other).flatMap(figuresIn),
      ...finishingFigures,
      `${record.screws!.reduce((sum, { count }) => sum + count, 0)}`,
      // all screws of one length of a layer, of the frame
      ...sheets.flatMap(({ screws }) => screws.lengths.map(({ count }) => `${count}`)),
      ...record.weight!.ramps.flatMap(({ frame }) => massFigures(frame, units)),
      // studs, steps, rows, pages, hours
      ...Array.from({ length: 61 }, (_, i) => `${i}`),
    ])
    let looked = 0
    const lost: string[] = []
    for (const { texts } of pages) {
      const said = linesOf(texts)
      // the end of a scale bar and its middle
      const bars = [...said.matchAll(/^(\d+) (?:mm|in)$/gm)].map((found) => Number(found[1]))
      const scales = new Set(bars.flatMap((end) => [`${end}`, `${end / 2}`]))
      for (const figure of figuresIn(said)) {
        looked++
        if (!known.has(figure) && !scales.has(figure)) lost.push(figure)
      }
    }
    return { looked, lost }
  }

  test.each(templates)(
    '%s: each is one of `figures --json`, or a count',
    async (name) => {
      const { looked, lost } = await unknown(name)
      expect(lost).toEqual([])
      expect(looked).toBeGreaterThan(200)
    },
    120_000,
  )

  test('of another ramp are noticed', async () => {
    const { lost } = await unknown('quarter-mm', 'quarter-mm-round')
    expect(lost.length).toBeGreaterThan(20)
  }, 120_000)
})

test('ropes of a flat keep off the bolts of the plate over its joint', () => {
  for (const name of ['quarter-and-flat-mm', 'quarter-and-flat-in']) {
    const design = designOf(templateText(name))
    const { joints } = figuresRecord(design, figuresJob(design))
    const bolts = joints!.flatMap(({ holes }) => holes.flat)
    const { job } = made(design, 'a4', ['moving'])
    const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
    const [, ...ropes] = /, (\d+)(?: \d+\/\d+)?[+–]? and (\d+)[^a-z]* from its end/.exec(said)!
    const unit = name.endsWith('-in') ? 25.4 : 1
    for (const rope of ropes)
      for (const bolt of bolts) expect(Math.abs(Number(rope) * unit - bolt)).toBeGreaterThan(60)
    expect(bolts.length).toBeGreaterThan(1)
  }
})

describe('one length has one figure', () => {
  test.each(['quarter-mm', 'quarter-mm-round', 'pair-mm', 'quarter-and-flat-mm'])(
    '%s: tenths of a millimetre stand where the lip is set and where stock is named, nowhere else',
    (name) => {
      const design = designOf(templateText(name))
      const { job } = made(design, 'a4')
      const { ramps, checks } = figuresRecord(design, figuresJob(design))
      const fine = (mm: number): string => showLength(mm, 'mm', { decimals: 1 })
      // pipe, its notch and reveals, angles, thickness of screws and of steel
      const tenths = new Set(
        ramps.flatMap(({ coping, transition }) => [
          ...(coping
            ? [coping.outside, coping.notch.along, coping.notch.down, coping.up, coping.out].map(fine)
            : []),
          ...(transition ? [transition.lipAngle.toFixed(1)] : []),
        ]),
      )
      for (const known of ['4.5', '1.5', ...checks.flatMap(({ message }) => figuresIn(message))])
        tenths.add(known)
      const found = job.pages
        .flatMap(({ drawing }) => wordsIn(drawing))
        .flatMap((said) => said.match(/\d+\.\d+/g) ?? [])
      expect(found.filter((figure) => !tenths.has(figure))).toEqual([])
      expect(found.length).toBeGreaterThan(8)
    },
    60_000,
  )

  test.each(['quarter-in', 'pair-mm'])(
    '%s: a timber has one place, and so has each row of the deck',
    (name) => {
      const design = designOf(templateText(name))
      const { units } = design
      const { job } = made(design, 'a4', ['framing', 'deck'])
      let rows = 0
      for (const ramp of job.solved.ramps) {
        if (ramp.kind !== 'quarter') continue
        const told = (mm: number): number => Math.round(mm / (units === 'mm' ? 1 : 25.4 / 32))
        // the first stud's two lengths differ by a figure's last place: the second is not said
        const [toe] = ramp.studs
        expect(told(toe!.at)).not.toBe(told(toe!.x))
        const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing))
        expect(said).toContain(showLength(toe!.at, units))
        if (name === 'pair-mm') expect(said).not.toContain(showLength(toe!.x, units))
        const board = ramp.deckBoard!
        for (const { at, timber } of board.rows) {
          expect(told(at)).toBe(told(ramp.deckTimbers[timber]!.x) - told(board.from))
          rows++
        }
      }
      expect(rows).toBeGreaterThan(2)
    },
  )
})

test('parts stand on the pages that the second one names, in the order of the day', () => {
  const { job } = made(designOf(templateText('quarter-and-flat-mm')), 'letter')
  const second = wordsIn(job.pages[1]!.drawing)
  const listed = second.slice(second.indexOf('In this booklet, by page') + 1)
  for (const [said, name] of [
    ['What to buy', 'buying'],
    ['Skin, layer by layer', 'skin'],
    ['Flat', 'flat'],
    ['Looking after it', 'care'],
  ] as const) {
    const page = 1 + job.pages.findIndex(({ begins }) => begins.some((one) => one.name === name))
    expect(listed[listed.indexOf(said) + 1]).toBe(`${page}`)
  }
})

test('sheets of a flat are drawn no smaller than 1 : 50, and the stop block has the length of each ramp', () => {
  for (const paper of papers) {
    const { job } = made(designOf(templateText('quarter-and-flat-mm')), paper, ['skin'])
    const scales = job.pages
      .flatMap(({ drawing }) => wordsIn(drawing))
      .flatMap((said) => /^1 : (\d+)$/.exec(said)?.[1] ?? [])
      .map(Number)
    expect(scales.length).toBeGreaterThan(4)
    expect(Math.max(...scales)).toBeLessThanOrEqual(50)
  }
  const { job } = made(designOf(templateText('pair-mm')), 'a4', ['cutting'])
  const [outer, inner] = job.solved.ramps.map(({ studLength }) => showLength(studLength, 'mm'))
  expect(outer).not.toBe(inner)
  expect(job.pages.flatMap(({ drawing }) => wordsIn(drawing))).toContain(`${outer}, then ${inner}`)
})

describe('what stands for one thing stands for no other', () => {
  test.each(['quarter-in', 'quarter-and-flat-mm', 'pair-mm'])(
    '%s: marks, numbers of timbers, letters of checks and the section share no sign',
    (name) => {
      const design = designOf(templateText(name))
      const { job } = made(design, 'a4')
      const cuts = cutsJob(design)
      if (isRefusal(cuts)) throw new Error(JSON.stringify(cuts))
      const marks = [
        ...cuts.sheets.flatMap(({ parts }) => parts.map(({ mark }) => mark)),
        ...cuts.boards.flatMap(({ cuts: own }) => own.map(({ part }) => part.mark)),
      ]
      const timbers = job.solved.ramps.flatMap((ramp) => timbersOf(ramp).map((_, i) => `${i + 1}`))
      const kinds = [marks, timbers, [...checkLetters], [sectionNumber]]
      const all = kinds.flatMap((own) => [...new Set(own)])
      expect(new Set(all).size).toBe(all.length)
      // and all of them are on paper
      const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing))
      for (const sign of [...timbers, sectionNumber]) expect(said).toContain(sign)
      const whole = said.join(' ')
      for (const { mark, part } of cuts.sheets.flatMap(({ parts }) => parts))
        if (part === 'run-out' || part === 'deck-board') expect(whole).toMatch(new RegExp(`: ${mark}`))
    },
    60_000,
  )
})

test('every size of screw on the list stands in the steps, with its head', () => {
  for (const name of ['quarter-in', 'pair-mm']) {
    const design = designOf(templateText(name))
    const buy = buyJob(design)
    if (isRefusal(buy)) throw new Error(JSON.stringify(buy))
    const sold = buy.facts.stock.list
      .filter(({ part }) => part === 'screws')
      .map(({ what }) => /^wood screws ((?:No\. )?[\d.]+ × [\d /]+?)(?: in| mm)?, (.+)$/.exec(what)!)
    expect(sold.length).toBeGreaterThan(2)
    const { job } = made(design, 'a4', ['framing', 'skin', 'coping', 'deck'])
    const steps = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
    for (const [, size, sortOf] of sold) {
      expect(steps).toContain(size)
      expect(steps).toContain(sortOf)
    }
  }
})

test('a frame is squared while its corners are held, before what comes between them', () => {
  const design = designOf(templateText('quarter-in'))
  const { job } = made(design, 'letter', ['framing'])
  const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
  const at = (words: string): number => {
    const place = said.indexOf(words)
    expect(place, words).toBeGreaterThan(-1)
    return place
  }
  const square = at('Measure from corner')
  for (const early of ['Screw stud 1 (T1),', 'Screw timber 10 (T10)', 'Screw timber 11 (T11)'])
    expect(at(early)).toBeLessThan(square)
  for (const late of ['Screw studs 2 to 6 on their marks', 'Screw timbers 7 to 9'])
    expect(at(late)).toBeGreaterThan(square)
  expect(at('both diagonals again')).toBeGreaterThan(at('Screw timbers 7 to 9'))
})

test('how panels are marked and sawn is said once, before the first step that saws one', () => {
  const both = templateText('quarter-and-flat-mm')
  const flat = both.slice(0, both.indexOf('  - name: quarter'))
  for (const text of [...templates.map(templateText), flat]) {
    const { job } = made(designOf(text), 'a4', ['cutting'])
    const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
    const saws = said.search(/Saw the (?:straight edges|\d+ sides|sheets)/)
    expect(saws).toBeGreaterThan(-1)
    for (const rule of [
      text === flat ? 'Mark the cuts' : 'Mark the straight cuts first',
      'STOP: where the cut',
      'the blade may run',
      'is named; it takes',
    ]) {
      const parts = said.split(rule)
      expect(parts.length, rule).toBe(2)
      expect(parts[0]!.length, rule).toBeLessThan(saws)
    }
  }
})

test('length and width of every panel are measured before the first cut, beside the size that its pieces are laid for', () => {
  for (const name of templates) {
    const design = designOf(templateText(name))
    const cuts = cutsJob(design)
    if (isRefusal(cuts)) throw new Error(JSON.stringify(cuts))
    const { job } = made(design, 'a4', ['first'])
    const said = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
    const table = said.slice(said.indexOf('Panels as bought'))
    const rows = [...table.matchAll(/panels? (\d[\d ,andto]*) (\d[\d ./+–]* × \d[\d ./+–]*\d)/g)]
    const sizes = new Map<number, string>()
    for (const [, numbers, size] of rows)
      for (const [, from, to = from] of numbers!.matchAll(/(\d+)(?: to (\d+))?/g))
        for (let n = Number(from); n <= Number(to); n++) sizes.set(n, size!)
    const panels = cuts.sheets.flatMap((own) => own.panels)
    expect(panels.length).toBeGreaterThan(0)
    expect([...sizes].sort(([a], [b]) => a - b)).toEqual(
      panels.map(({ number, size }) => [number, size.map((mm) => showLength(mm, design.units)).join(' × ')]),
    )
  }
})

/** What words say before they name a page, and what stands on that page. */
const namedOnPages: readonly (readonly [said: RegExp, stands: (...words: string[]) => readonly string[]])[] =
  [
    [/ on panel (\d+)$/, (panel) => [`Panel ${panel} of`]],
    [/ panels? (\d+)[^.(]*, (?:each )?in the order of (?:its|the) panel$/, (panel) => [`Panel ${panel} of`]],
    // the first panel is that of a side
    [/what the panel they come from leaves over$/, () => ['Panel 1 of', 'side;']],
    [/ corner of the notch$/, () => ['The notch: dashed is what is sawn away', 'Once the notch is sawn']],
    [/ check (S\d+) (?:as before, by its own|by the) table$/i, (side) => ['Checks on the sawn wood', side]],
    [
      / drill for handles or ropes(?:, ramp by ramp in Storing and moving)?$/,
      () => ['rubber strip', ' each side'],
    ],
    [/ once both are painted$/, () => ['Round every ']],
    [/ and have their rubber strip$/, () => ['tack the rubber strip']],
    [/ part Coping$/, () => ['The pipe from above, its holes']],
    [/ Saw the timbers by board$/, () => ['Timber by board', 'Square one end']],
    [
      /(?::|and) (?:([a-z]+) )?(\d[\d /+–]*) long(?:, for each bay)?$/,
      (ramp, long) => [`The frame from above${ramp === undefined ? '' : `: ${ramp}`}`, ` ${long} `],
    ],
    [/ for Finishing$/, () => ['Round every ']],
    [
      / (\w+) is kept inside (\w+)$/,
      (ramp, outer) => [
        `Put ${ramp.toLowerCase()} into ${outer}`,
        `${ramp.toLowerCase()} put away in ${outer}`,
      ],
    ],
  ]

test.each(templates)(
  '%s: what words name a page for stands on that page, whichever the paper, and a part alone names none that it has not',
  (name) => {
    for (const paper of papers) {
      const { job } = made(designOf(templateText(name)), paper)
      const pages = job.pages.map(({ drawing }) => wordsIn(drawing).join(' '))
      const whole = pages.join(' ')
      let named = 0
      for (const { index, 1: page } of whole.matchAll(/ \(page (\d+)\)/g)) {
        const before = whole.slice(0, index).replace(/ \(page \d+\)/g, '')
        const found = namedOnPages.flatMap(([said, stands]) => {
          const words = said.exec(before)
          return words ? [stands(...words.slice(1))] : []
        })
        expect(found, `${before.slice(-60)} (page ${page})`).toHaveLength(1)
        for (const one of found[0]!)
          expect(` ${pages[Number(page) - 1]} `, `${before.slice(-60)} (page ${page})`).toContain(one)
        named++
      }
      expect(named).toBeGreaterThan(5)
      expect(whole).not.toMatch(/design file|good-face|[\uE000\uE001`]/)
    }
    const alone = made(designOf(templateText(name)), 'a4', ['cutting']).job.pages
    expect(alone.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')).not.toMatch(
      /Coping \(page|Finishing \(page/,
    )
  },
  60_000,
)

test('all pieces stand in one table where a page has room for it, as panels and boards have them', () => {
  let listed = 0
  for (const name of ['quarter-in', 'quarter-and-flat-mm', 'quarter-mm']) {
    const design = designOf(templateText(name))
    const { units } = design
    for (const paper of papers) {
      const { job } = made(design, paper)
      const said = job.pages
        .map(({ drawing }) => wordsIn(drawing))
        .find((words) => words.includes('All pieces'))
      if (!said) continue
      const cuts = cutsJob(design)
      if (isRefusal(cuts)) throw new Error(JSON.stringify(cuts))
      const { panels } = cutsRecord(design, cuts)
      const rows = said.slice(said.indexOf('All pieces'))
      for (const { panel, pieces } of panels)
        for (const { mark, outline } of pieces) {
          const [wide, high] = [0, 1].map((axis) => {
            const along = outline.map((p) => p[axis]!)
            return showLength(Math.max(...along) - Math.min(...along), units)
          })
          const at = rows.indexOf(mark)
          expect(at, mark).toBeGreaterThan(0)
          // its name may take two lines
          expect(rows.slice(at, at + 5).join('|')).toContain(`|${wide} × ${high}|panel ${panel}`)
          listed++
        }
      const timbers = job.solved.ramps.reduce((sum, ramp) => sum + timbersOf(ramp).length, 0)
      const counts = [...rows.join(' ').matchAll(/(\d+) timbers?/g)].map(([, count]) => count)
      expect(counts.reduce((sum, count) => sum + Number(count), 0)).toBe(timbers)
    }
  }
  expect(listed).toBeGreaterThan(10)
}, 60_000)

test('a screw has one letter on the list, at true size and in the steps', () => {
  const design = designOf(templateText('pair-mm'))
  const buy = buyJob(design)
  if (isRefusal(buy)) throw new Error(JSON.stringify(buy))
  const { job } = made(design, 'a4', ['framing', 'skin', 'coping', 'deck'])
  const steps = job.pages.flatMap(({ drawing }) => wordsIn(drawing)).join(' ')
  let letters = 0
  for (const { part, what, note } of buy.facts.stock.list.filter(({ part: of }) => of === 'screws')) {
    const [, size] = /screws (.+?)(?: mm)?, /.exec(what)!
    const [, letter] = /box ([A-Z])$/.exec(note)!
    expect(part).toBe('screws')
    expect(steps).toContain(`${size} (${letter})`)
    letters++
  }
  expect(letters).toBeGreaterThan(3)
})

/** All texts of a drawing, groups within. */
const wordsIn = (drawing: Drawing): readonly string[] =>
  drawing.flatMap((mark) =>
    mark.kind === 'group' ? wordsIn(mark.marks) : mark.kind === 'text' ? [mark.text] : [],
  )
