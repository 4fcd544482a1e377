import type { Asks } from '../../design/asks.ts'
import { showDegrees } from '../../length/show-angle.ts'
import { showLength, type Units } from '../../length.ts'
import { type Check, warn } from '../../ramp/check/check.ts'
import type { SolvedDesign } from '../../ramp/ramp.ts'
import { nearerSide } from './bars.ts'
import type { LimitName } from './judge.ts'
import type { Answer } from './settle.ts'

const limitWords = (name: LimitName, { limits }: Asks, units: Units): string => {
  switch (name) {
    case 'length':
      return `length ${showLength(limits.length!, units, { unit: true })}`
    case 'lip':
      return `lip ${limits.lip![0]}..${limits.lip![1]}°`
    case 'panels':
      return limits.panels === 1 ? '1 panel' : `${limits.panels} panels`
    case 'paper':
      return limits.paper === 1 ? '1 page' : `${limits.paper} pages`
    default:
      return name satisfies never
  }
}

const measureWords = (name: LimitName, { measures }: Answer, units: Units): string => {
  const value = measures[name]!
  switch (name) {
    case 'length':
      return `the side is ${showLength(value, units, { unit: true })} long`
    case 'lip':
      return `the lip is ${showDegrees(value)}`
    case 'panels':
      return `the sides take ${value} panels`
    case 'paper':
      return `the side takes ${value} pages`
    default:
      return name satisfies never
  }
}

/** What goes how far: the most of a figure, the least toe, the tangent nearest to the floor. */
const furthest = ({ figure }: Asks): string =>
  figure === 'toe' ? 'the least' : figure === 'tangent' ? 'the nearest to 0' : 'the most'

/** A figure that ends before the angle is met. */
const endWords = ({ asks, measures, shown }: Answer): string =>
  `${shown} is the ${nearerSide(asks, measures.lip!) > 0 ? 'most' : 'least'} that this figure may be`

/** One line for a figure that was found: what it is, and why no other. */
export const answerLine = (answer: Answer, units: Units): string => {
  const { asks, key, shown, measures, binds, passed, missed } = answer
  const found = `${key} ${shown}`
  if (passed.length > 0) return `${found}: nearest to its limits`
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
      ...answer.passed.map(
        (name) =>
          `no ${answer.key} keeps ${limitWords(name, answer.asks, units)}: with ${answer.shown}, the nearest, ${measureWords(name, answer, units)}; change the limit or another figure`,
      ),
      ...(answer.missed === null ? [] : [missedWords(answer, answer.missed, units)]),
    ].map((message): Check => ({ ...warn('limits', message), ramp: answer.ramp, offers: [] })),
  )

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

/** A solved design whose checks tell of the limits as well: after what stops, before what is to be watched. */
export const withAnswers = <S extends SolvedDesign>(
  solved: S,
  answers: readonly Answer[],
  units: Units,
): S => {
  const own = answerChecks(answers, units)
  const stops = solved.checks.filter(({ level }) => level === 'stop').length
  return own.length === 0
    ? solved
    : { ...solved, checks: [...solved.checks.slice(0, stops), ...own, ...solved.checks.slice(stops)] }
}
