import {
  answerLine,
  chooseRamps,
  chosenNotes,
  coverDesign,
  drawDesign,
  isRefusal,
  type PlotJob,
  plotJob,
  printerEffects,
  readWishes,
  showLength,
  solveDesign,
  svgLayers,
  waysOut,
  withAnswers,
} from '../../index.ts'
import { reprintName } from '../words/file-name.ts'
import { faultWords, formWords } from '../words/form-words.ts'
import { filledText } from './filled.ts'
import { designOf, granted, layingOf, profileOf, settledOf } from './lay.ts'
import type { Answer, Lay, Question } from './messages.ts'
import { sha256, type WebPlatform } from './platform.ts'
import { openSet, reprint } from './reprint.ts'
import { type Progress, save } from './save.ts'

/** Throws with the words for the builder where it cannot be done. */
export const answer = async (
  question: Question,
  progress: Progress,
  platform: WebPlatform,
): Promise<Answer> => {
  switch (question.kind) {
    case 'checks':
      return checked(question.text)
    case 'counts': {
      const design = designOf(question.text)
      const drawn = drawDesign(design)
      if (drawn.stopped) throw new Error('nothing can be printed while something stops')
      const { counts, cover, why } = coverDesign(design, drawn, layingOf(question.lay, design))
      return { kind: 'counts', counts, cover, why }
    }
    case 'plan': {
      const { text, lay } = question
      const { warnings } = layingOf(lay, designOf(text))
      return { kind: 'plan', plan: plot(text, lay).set.plan, warnings }
    }
    case 'page': {
      const { set } = plot(question.text, question.lay)
      const { width, height } = set.plan.paper
      // on larger paper there may be fewer by now
      const page = set.pages[Math.min(question.page, set.pages.length) - 1]!
      const svg = svgLayers(page.draw(), height, { decimals: 2 })
      return { kind: 'page', svg, width, height, turn: turnOf(svg) }
    }
    case 'save':
      return { kind: 'file', file: await save(question, progress, platform) }
    case 'open-set':
      return openSet(question.bytes)
    case 'reprint': {
      const { name, bytes, pages, profile } = question
      const some = await reprint(bytes, pages, profileOf(profile), platform)
      return { kind: 'file', file: { name: reprintName(name, pages), ...some } }
    }
    case 'effect': {
      const design = designOf(question.text)
      const { effects } = granted(printerEffects(design, profileOf(question.profile)!))
      const shown = (mm: number): string => showLength(mm, design.units, { decimals: 1, unit: true })
      return {
        kind: 'effect',
        lines: effects.map(
          ({ ramp, uncorrected: { lipUp, lipBack }, corrected }) =>
            `${ramp}: uncorrected, the lip comes out ${shown(Math.abs(lipUp))} too ${lipUp < 0 ? 'low' : 'high'} and ${shown(Math.abs(lipBack))} too far ${lipBack < 0 ? 'forward' : 'back'}; corrected, within ${corrected.likely.toFixed(1)} mm as a rule`,
        ),
      }
    }
    case 'choose': {
      const wishes = readWishes(question.wishes)
      if (isRefusal(wishes))
        throw new Error('faults' in wishes ? faultWords(wishes.faults) : 'it cannot be read')
      const ramps = chooseRamps(wishes)
      if (ramps.length === 0) {
        const ways = waysOut(question.wishes, wishes).map(wayWords)
        throw new Error(
          `no ramp keeps all that${ways.length === 0 ? '' : `; one does with ${ways.join(', or ')}`}`,
        )
      }
      return { kind: 'choose', ramps, notes: chosenNotes(ramps, wishes) }
    }
    default:
      return question satisfies never
  }
}

/** A way out in the words of the form: `no --timbers` is a limit left empty. */
const wayWords = (way: string): string => formWords(way.replace(/^no --(.+)/, 'nothing said of $1'))

/** Quarter turns, clockwise, that most of what is to be read on a page is turned by. */
const turnOf = (svg: string): number => {
  const letters = [0, 0, 0, 0]
  for (const [, x, y, words] of svg.matchAll(/<text transform="matrix\((\S+) (\S+) [^>]*>([^<]*)/g))
    letters[(Math.round(Math.atan2(Number(y), Number(x)) / (Math.PI / 2)) + 4) % 4]! += words!.length
  return letters.indexOf(Math.max(...letters))
}

const checked = (text: string): Answer => {
  const { design, answers } = settledOf(text)
  const { checks, stopped } = withAnswers(solveDesign(design), answers, design.units)
  return {
    kind: 'checks',
    checks,
    stopped,
    filled: filledText(text, { design, answers }),
    found: answers.map((one) => {
      const line = answerLine(one, design.units)
      return design.ramps.length > 1 ? `${one.ramp}: ${line}` : line
    }),
  }
}

const plot = (text: string, lay: Lay): PlotJob => {
  const design = designOf(text)
  return granted(plotJob(design, text, layingOf(lay, design), sha256))
}
