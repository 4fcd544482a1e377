import type { Asks } from '../../design/asks.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { wordList } from '../../length/word-list.ts'
import type { Units } from '../../length.ts'
import { type Check, warn } from '../../ramp/check/check.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import { nearerSide } from './bars.ts'
import type { LimitName } from './judge.ts'
import { limitWords, measureWords, unmovedWords } from './limit-words.ts'
import type { Answer } from './settle.ts'
import { withTypedFigures } from './typed-figures.ts'

/** What goes how far: the most of a figure, the least toe, the tangent nearest to the floor. */
const furthest = ({ figure }: Asks): string =>
  figure === 'toe' ? 'the least' : figure === 'tangent' ? 'the nearest to 0' : 'the most'

/** A figure that ends before the angle is met. */
const endWords = ({ asks, measures, shown }: Answer): string =>
  `${shown} is the ${nearerSide(asks, measures.lip!) > 0 ? 'most' : 'least'} that this figure may be`

/** One line for a figure that was found: what it is, and why no other. */
export const answerLine = (answer: Answer, units: Units): string => {
  const { asks, key, shown, measures, binds, passed, unmoved, missed } = answer
  const found = `${key} ${shown}`
  if (passed.length > unmoved.length) return `${found}: nearest to its limits`
  const by = binds.map((bind) => (bind === 'ramp' ? 'the ramp itself' : limitWords(bind, asks, units)))
  if (asks.lip !== null) {
    const bar = binds.includes('ramp')
      ? '; nearer to it another part stops'
      : by.length > 0
        ? `; nearer to it ${by.join(' and ')} ${by.length > 1 ? 'are' : 'is'} passed`
        : missed === null
          ? ''
          : `; ${endWords(answer)}`
    return `${found}: lip ${showDegrees(measures.lip!)}, asked for ${asks.lip}°${bar}`
  }
  return `${found}: ${furthest(asks)} that ${by.length > 0 ? `${by.join(' and ')} ${by.length > 1 ? 'allow' : 'allows'}` : 'can be typed'}`
}

/** Limits that no value keeps, and angles that none meets, each with what comes out. */
export const answerChecks = (answers: readonly Answer[], units: Units): readonly Check[] =>
  answers.flatMap((answer) =>
    [
      ...passedWords(answer, units),
      ...(answer.missed === null ? [] : [missedWords(answer, answer.missed, units)]),
    ].map((message): Check => ({ ...warn('limits', message), ramp: answer.ramp, offers: [] })),
  )

/** Each limit that no value keeps; those that exclude each other in one line. */
const passedWords = (answer: Answer, units: Units): readonly string[] => {
  const { key, asks, shown, together, unmoved } = answer
  const passed = answer.passed.filter((name) => !unmoved.includes(name))
  const line = (limits: readonly LimitName[], over: readonly LimitName[]): string => {
    const all = limits.map((name) => limitWords(name, asks, units))
    const named = all.length > 1 ? `${wordList(all)} together` : all[0]!
    const found = wordList(over.map((name) => measureWords(name, answer, units)))
    return `no ${key} keeps ${named}: with ${shown}, the nearest, ${found}; change ${all.length > 1 ? 'one of them' : 'the limit'} or another figure`
  }
  const shared = passed.filter((name) => together.includes(name))
  return [
    ...passed.filter((name) => !together.includes(name)).map((name) => line([name], [name])),
    ...(shared.length > 0 ? [line(together, shared)] : []),
    ...unmoved.map((name) => `${unmovedWords(name, answer, units)}; change the limit or another figure`),
  ]
}

const missedWords = (answer: Answer, missed: string, units: Units): string => {
  const { key, asks, binds, shown } = answer
  const limits = binds.flatMap((bind) => (bind === 'ramp' ? [] : [limitWords(bind, asks, units)]))
  const why = binds.includes('ramp')
    ? `give it ${missed} and leave \`lip\` out to read what stops, and change that`
    : limits.length > 0
      ? `nearer to it ${limits.join(' and ')} ${limits.length > 1 ? 'are' : 'is'} passed: change the angle, the limit or another figure`
      : `${endWords(answer)}: change the angle or another figure`
  return `no ${key} meets lip ${asks.lip}°: with ${shown}, the nearest, ${measureWords('lip', answer, units)}; ${why}`
}

/** A solved design whose checks tell of the limits as well, after what stops, before what is to be watched, and of what goes out with a figure that an offer types. */
export const withAnswers = <S extends SolvedDesign>(
  solved: S,
  answers: readonly Answer[],
  units: Units,
): S => {
  const own = answerChecks(answers, units)
  const typed = withTypedFigures(solved, answers)
  const stops = typed.checks.filter(({ level }) => level === 'stop').length
  return own.length === 0
    ? typed
    : { ...typed, checks: [...typed.checks.slice(0, stops), ...own, ...typed.checks.slice(stops)] }
}
