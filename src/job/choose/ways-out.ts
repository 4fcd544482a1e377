import { inch } from '../../geometry/inch.ts'
import { showLength } from '../../length.ts'
import { anyRamp } from './choose.ts'
import { readWishes, type Wishes, type WishKey, type WishWords } from './wishes.ts'

/** Heights that are looked at on either side, the nearest first. */
const looks = 8
const strides = { mm: 50, in: 2 * inch } as const

/** What keeps a ramp from being found: those wishes that one can do without. */
const spared = [
  'panels',
  'timbers',
  'garage',
  'door',
  'ceiling',
  'rider',
  'width',
] as const satisfies readonly WishKey[]

/** Where nothing was found: what makes a ramp when it alone is changed, each tried. */
export const waysOut = (said: WishWords, wishes: Wishes): readonly string[] => {
  const works = (words: WishWords): boolean => {
    const read = readWishes(words)
    return !('refused' in read) && anyRamp(read) !== null
  }
  const without = (key: WishKey): WishWords => {
    const { [key]: _, ...rest } = said
    return rest
  }
  const height = wishes.height === null ? undefined : heightThat(said, wishes, works)
  return [
    ...(height === undefined ? [] : [`--height "${height}"`]),
    ...spared.filter((key) => said[key] !== undefined && works(without(key))).map((key) => `no --${key}`),
  ]
}

const heightThat = (
  said: WishWords,
  { units, height }: Wishes,
  works: (words: WishWords) => boolean,
): string | undefined => {
  const stride = strides[units]
  const middle = Math.round(height! / stride)
  return Array.from({ length: looks }, (_, i) => [middle - i, middle + i])
    .flat()
    .filter((count) => count > 0 && Math.abs(count * stride - height!) > 0.5)
    .map((count) => showLength(count * stride, units, { unit: true }))
    .find((typed) => works({ ...said, height: typed }))
}
