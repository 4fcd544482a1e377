import { describe, expect, test } from 'vitest'
import { fitPoints } from '../../../src/job/fit.ts'
import { readPoints } from '../../../src/ramp/match/point-list.ts'
import { outOfOrder, zeroWords } from '../../../src/ramp/match/zero-words.ts'

const pointsOf = (text: string, units: 'mm' | 'in' = 'mm') => {
  const list = readPoints(text, units)
  if ('faults' in list) throw new Error(list.faults.map(({ message }) => message).join('\n'))
  return list.points
}
const faultsOf = (text: string) => {
  const list = readPoints(text, 'mm')
  return 'faults' in list
    ? list.faults.map(({ line, column, message }) => `${line}:${column} ${message}`)
    : []
}

describe('a list of points', () => {
  test('is read with commas, semicolons, tabs or blanks, named columns in any order, comments and empty lines', () => {
    const three = [
      { x: 100, y: 3 },
      { x: 200, y: 11.5 },
      { x: 400, y: 47.6 },
    ]
    expect(pointsOf('100 3\n200 11.5\n400 47.6')).toEqual(three)
    expect(pointsOf('x,y\r\n100,3\r\n200,11.5\r\n400,47.6\r\n')).toEqual(three)
    expect(pointsOf('no;y;x\n1;3;100\n2;11.5;200\n\n# the lip\n3;47.6;400 # last')).toEqual(three)
    expect(pointsOf('100\t3\n200\t11.5\n400\t47.6')).toEqual(three)
    expect(pointsOf('\ufeffX,Y\n10 cm,3 mm\n20 cm,11.5\n0.4 m,47.6')).toEqual(three)
  })

  test('takes fractions of an inch between commas', () => {
    expect(pointsOf('4, 1/8\n8, 17/32\n16, 2 1/8', 'in')).toEqual([
      { x: 101.6, y: 3.175 },
      { x: 203.2, y: 13.49375 },
      { x: 406.4, y: 53.975 },
    ])
  })

  test('takes no decimal comma for the end of a value, in lists of semicolons and tabs', () => {
    for (const mark of [';', '\t'])
      expect(faultsOf(`0${mark}0\n150${mark}6,9\n300,5${mark}26,9\n450${mark}60.9`)).toEqual([
        '2:5 `6,9` has a comma; write `6.9`, with a point',
        '3:1 `300,5` has a comma; write `300.5`, with a point',
        '3:7 `26,9` has a comma; write `26.9`, with a point',
      ])
    expect(faultsOf('x;y\n1;2\n150,5')[0]).toMatch(/^3:1 `150,5` has a comma/)
    expect(faultsOf('x,y\n1,2\n150;6,9')[0]).toMatch(/^3:1 `150;6` is not a length/)
    expect(pointsOf('no;y;x;of\n1;3;100;plywood, 9\n2;11.5;200;\n3;47.6;400\t')).toHaveLength(3)
  })

  test('takes no decimal comma for the end of a value, in a list parted by blanks', () => {
    const faults = [
      '2:5 `6,6` has a comma; write `6.6`, with a point',
      '3:1 `300,5` has a comma; write `300.5`, with a point',
      '3:7 `26,7` has a comma; write `26.7`, with a point',
    ]
    expect(faultsOf('0 0\n150 6,6\n300,5 26,7\n450 60.7')).toEqual(faults)
    expect(faultsOf('x y\n150 6,6\n300,5 26,7\n450 60.7')).toEqual(faults)
    // one with a blank behind it is none
    expect(pointsOf('0 0\n150, 6.6\n300 26.7')).toEqual([
      { x: 0, y: 0 },
      { x: 150, y: 6.6 },
      { x: 300, y: 26.7 },
    ])
  })

  test('says how two values are parted where a line has a comma between them and the first line has none', () => {
    const told = (mark: string) =>
      `2:1 \`100,3\` has a comma; part the two by ${mark}, as the first line does`
    expect(faultsOf('0 0\n100,3\n200 12')).toEqual([told('a blank')])
    expect(faultsOf('x;y\n100,3\n200;12')).toEqual([told('a `;`')])
    expect(faultsOf('0\t0\n100,3\n200\t12')).toEqual([told('a tab')])
    // a point without its height
    expect(faultsOf('0,0\n100\n200,12')).toEqual(['2:1 a point needs two lengths: along the floor, and up'])
  })

  test('refuses a value that no column is named for', () => {
    expect(faultsOf('1,0,0\n150,5,6,6\n150 6.6 7\n16 2 1/8')).toEqual(
      ['1:5 `0`', '2:7 `6`', '3:9 `7`', '4:6 `1/8`'].map((place) =>
        expect.stringContaining(`${place} is a third value, and a point is two`),
      ),
    )
    expect(faultsOf('x,y\n150,5,6,6\n300,26,9\n450,60')).toEqual([
      '2:7 `6` is more than the first line names; write decimals with a point',
      '3:8 `9` is more than the first line names; write decimals with a point',
    ])
    // a mark at the end of a line is none
    expect(pointsOf('0,0,\n150,6,\n300,26,')).toHaveLength(3)
  })

  test('tells every bad line with its place', () => {
    expect(faultsOf('x,y\n100,3\n200\n300,b\n,5\n99 m,4')).toEqual([
      '3:1 a point needs two lengths: along the floor, and up',
      expect.stringMatching(/^4:5 `b` is not a length; /),
      '5:1 a point needs two lengths: along the floor, and up',
      expect.stringMatching(/^6:1 `99 m` is more than 20 m/),
    ])
    expect(faultsOf('a,b\n1,2\n3,4\n5,6')[0]).toMatch(
      /^1:1 the first line names `a`, `b`; name the columns x/,
    )
    expect(faultsOf('')[0]).toMatch(/0 points/)
  })
})

describe('a zero that is not the floor', () => {
  const said = (level: number) => zeroWords(level, { x: 30, y: 1700 + level }, 1700, 1, true, 'mm')
  test('is told with what may be the reason', () => {
    expect(said(0.6)).toBeNull()
    expect(said(2)).toMatch(/hook is 1 to 2 mm out/)
    expect(said(25)).toMatch(/read from its mark of 1 in\? Take 25 mm off each height/)
    expect(said(-100)).toMatch(/mark of 100 mm\? Take 100 mm more for each height/)
    expect(said(40)).toMatch(/keep it as the tangent/)
  })

  test('is not to be kept as a tangent that the design file refuses', () => {
    // a circle of 1700 that runs level 201 mm below the zero: the least tangent is -100 mm
    const points = [0, 200, 400, 600, 800].map((x) => ({ x, y: 1499 - Math.sqrt(1700 ** 2 - x ** 2) }))
    const { fit, doubts } = fitPoints(points, 1, 'surface', 'mm')!
    expect(fit.transition).toBeNull()
    const words = doubts.join('\n')
    expect(words).toMatch(/not -201 mm: it has no line for this curve/)
    expect(words).toMatch(/runs level 201 mm below the zero of your heights: the heights do not start at/)
    expect(words).not.toContain('keep it')
    const mark = points.map(({ x, y }) => ({ x, y: y - 53 }))
    expect(fitPoints(mark, 1, 'surface', 'mm')!.doubts.join('\n')).toMatch(/more for each height$/)
  })

  test('a level that was out by half a degree is told as such', () => {
    // a circle level at the floor, turned by 0.5° about the first reading: its centre (0, 1700) from (-600, 0)
    const turn = (0.5 * Math.PI) / 180
    const centre = {
      x: 600 * Math.cos(turn) - 1700 * Math.sin(turn),
      y: 600 * Math.sin(turn) + 1700 * Math.cos(turn),
    }
    expect(zeroWords(centre.y - 1700, centre, 1700, 1, true, 'mm')).toMatch(/the level was out by 0\.5°/)
  })

  test('points listed behind each other’s backs are counted', () => {
    const at = (...x: readonly number[]) => x.map((one) => ({ x: one, y: 0 }))
    expect(outOfOrder(at(1, 2, 3))).toEqual([])
    expect(outOfOrder(at(3, 2, 1))).toEqual([])
    expect(outOfOrder(at(1, 3, 2, 4))).toEqual([3])
  })
})
