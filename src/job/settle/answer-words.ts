import type { Asks } from '../../design/asks.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { wordList } from '../../length/word-list.ts'
import type { Units } from '../../length.ts'
import { type Check, warn } from '../../ramp/check/check.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import { type Bind, nearerSide } from './bars.ts'
import type { LimitName } from './judge.ts'
import { limitWords, measureWords, unmovedWords } from './limit-words.ts'
import type { Answer } from './settle.ts'
import { withTypedFigures } from './typed-figures.ts'

/** What goes how far: the most of a figure, the least toe, the tangent nearest to the floor. */
const furthest = ({ figure }: Asks): string => {
  if (figure === 'toe') return 'the least'
  if (figure === 'tangent') return 'the nearest to 0'
  return figure === 'width' ? 'the widest' : 'the most'
}

const bindWords = (bind: Bind, asks: Asks, units: Units): string => {
  if (bind === 'ramp') return 'the ramp itself'
  if (bind === 'edge') return 'a blunt edge'
  return bind === 'timber' ? 'the timber sold' : limitWords(bind, asks, units)
}

/** Whether it is no limit that bars it. */
const isBarred = ({ binds }: Answer): boolean => binds.includes('ramp') || binds.includes('timber')

/** A figure that ends before the angle is met. */
const endWords = ({ asks, measures, shown }: Answer): string =>
  `${shown} is the ${nearerSide(asks, measures.lip!) > 0 ? 'most' : 'least'} that this figure may be`

/** One line for a figure that was found: what it is, and why no other. */
export const answerLine = (answer: Answer, units: Units): string => {
  const idle = answer.idle.map((name) => limitWords(name, answer.asks, units))
  return `${foundWords(answer, units)}${idle.length > 0 ? `; it has no bearing on ${wordList(idle)}` : ''}`
}

const foundWords = (answer: Answer, units: Units): string => {
  const { asks, key, shown, measures, binds, passed, unmoved, missed } = answer
  const found = `${key} ${shown}`
  if (passed.length > unmoved.length) return `${found}: nearest to its limits`
  const by = binds.map((bind) => bindWords(bind, asks, units))
  if (asks.lip !== null) {
    const bar = isBarred(answer)
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
  const limits = binds.map((bind) => bindWords(bind, asks, units))
  const why = isBarred(answer)
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
