import {
  answerLine,
  chooseRamps,
  chosenNotes,
  coverDesign,
  drawDesign,
  editDesign,
  isRefusal,
  type PlotJob,
  plotJob,
  printerEffects,
  readSettled,
  readWishes,
  solveDesign,
  svgLayers,
  waysOut,
  withAnswers,
} from '../../index.ts'
import { designOf, granted, layingOf, profileOf } from './lay.ts'
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
    case 'plan':
      return { kind: 'plan', plan: plot(question.text, question.lay).set.plan }
    case 'page': {
      const { set } = plot(question.text, question.lay)
      const { width, height } = set.plan.paper
      const page = set.pages[question.page - 1]
      if (page === undefined) throw new Error(`there is no page ${question.page}`)
      const svg = svgLayers(page.draw(), height, { decimals: 2 })
      return { kind: 'page', svg, width, height, turn: turnOf(svg) }
    }
    case 'save':
      return { kind: 'file', file: await save(question, progress, platform) }
    case 'open-set':
      return openSet(question.bytes)
    case 'reprint':
      return {
        kind: 'file',
        file: await reprint(question.bytes, question.pages, profileOf(question.profile), platform),
      }
    case 'effect': {
      const { effects } = granted(printerEffects(designOf(question.text), profileOf(question.profile)!))
      return {
        kind: 'effect',
        lines: effects.map(
          ({ ramp, uncorrected: { lipUp, lipBack }, corrected }) =>
            `${ramp}: uncorrected, the lip comes out ${Math.abs(lipUp).toFixed(1)} mm too ${lipUp < 0 ? 'low' : 'high'} and ${Math.abs(lipBack).toFixed(1)} mm too far ${lipBack < 0 ? 'forward' : 'back'}; corrected, within ${corrected.likely.toFixed(1)} mm as a rule`,
        ),
      }
    }
    case 'choose': {
      const wishes = readWishes(question.wishes)
      if (isRefusal(wishes))
        throw new Error(
          'faults' in wishes ? wishes.faults.join('\n').replaceAll('--', '') : 'it cannot be read',
        )
      const ramps = chooseRamps(wishes)
      if (ramps.length === 0) {
        const ways = waysOut(question.wishes, wishes).map((way) => way.replaceAll('--', ''))
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

/** Quarter turns, clockwise, that most of what is to be read on a page is turned by. */
const turnOf = (svg: string): number => {
  const letters = [0, 0, 0, 0]
  for (const [, x, y, words] of svg.matchAll(/<text transform="matrix\((\S+) (\S+) [^>]*>([^<]*)/g))
    letters[(Math.round(Math.atan2(Number(y), Number(x)) / (Math.PI / 2)) + 4) % 4]! += words!.length
  return letters.indexOf(Math.max(...letters))
}

const checked = (text: string): Answer => {
  const reading = readSettled(text)
  if ('problems' in reading) throw new Error(reading.problems.map(({ message }) => message).join('\n'))
  const { design, answers } = reading
  const { checks, stopped } = withAnswers(solveDesign(design), answers, design.units)
  const at = (name: string): number => design.ramps.findIndex((ramp) => ramp.name === name)
  return {
    kind: 'checks',
    checks,
    stopped,
    filled: answers.reduce((all, { ramp, key, shown, asks }) => {
      const typed = editDesign(all, `ramps.${at(ramp)}.${key}`, shown)
      // an angle that was asked for follows from the figures now
      return asks.lip === null ? typed : editDesign(typed, `ramps.${at(ramp)}.lip`, null)
    }, text),
    found: answers.map((one) => answerLine(one, design.units)),
  }
}

const plot = (text: string, lay: Lay): PlotJob => {
  const design = designOf(text)
  return granted(plotJob(design, text, layingOf(lay, design), sha256))
}
