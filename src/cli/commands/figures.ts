import { readAsCut } from '../../job/as-cut-words.ts'
import { figuresJob, figuresRecord } from '../../job/figures.ts'
import { withNearMisses } from '../../job/near/near-misses.ts'
import { answerLine } from '../../job/settle/answer-words.ts'
import type { Answer } from '../../job/settle/settle.ts'
import { harmless } from '../../length/quote.ts'
import type { Units } from '../../length.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { checkNamed, sameFile, type Written, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, jsonOption } from '../options.ts'
import type { Shell } from '../shell.ts'
import { asCutText, figuresText } from '../words/figures-text.ts'
import { showChecks } from '../words/show-checks.ts'
import { wrap } from '../words/wrap.ts'

const rows = [
  {
    name: 'as-cut',
    takes: 'notch',
    many: 'each',
    help: 'what was measured of a notch that is cut already (`RAMP:along=…` where there are several), one of each or one alone: `along=` from the lip, `floor=` from wall to curve on its floor or `back=` from the back edge to the wall; `down=` from the top line or `bottom=` up from the bottom edge. Says what the pipe does in it, and the shim that cures it',
  },
  jsonOption,
  { name: 'out', takes: 'file', help: 'write it to a file instead: `.txt`, or with `--json` `.json`' },
  {
    name: 'picture',
    takes: 'file',
    help: 'also draw the ramp from the side with its dimensions, to scale: a `.png`, `.svg` or `.pdf` file',
  },
  forceOption,
] as const

export const figuresCommand = command({
  name: 'figures',
  help: 'show what the ramp comes out as, and what will not work',
  args: [{ name: 'design', help: 'design file' }],
  options: rows,
  run: ([file], options, shell) => figures(file, options, shell),
})

const written = (json: boolean): Written =>
  json ? { is: 'JSON', endings: ['.json'] } : { is: 'plain text', endings: ['.txt'] }

/** What the ramp comes out as, and what will not work. Exit 1 when something stops it. */
const figures = async (file: string, options: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design, answers, text: typed } = loadDesign(file)
  const { cuts } = done(readAsCut(options.asCut ?? [], design))
  const { out, picture, force = false, json = false } = options
  if (out !== undefined && picture !== undefined && sameFile(out, picture))
    throw new Failure(2, `--out and --picture both name ${out}; give each its own file`)
  if (out !== undefined) checkNamed(out, written(json), force, file)
  // loaded here, so that what draws no picture starts without it
  const pictures = picture === undefined ? null : await import('../pictures/picture.ts')
  pictures?.checkPicture(picture!, force, file)
  const { progress } = shell
  const job = withNearMisses(figuresJob(design, cuts, answers), typed, design, (ramp, of) =>
    progress?.at(ramp, of, 'near misses: ramp'),
  )
  progress?.end()
  const { solved, asCut } = job
  const several = design.ramps.length > 1
  const text = json
    ? `${JSON.stringify(figuresRecord(design, job), null, 2)}\n`
    : figuresText(design, job) +
      answers.map((answer) => `\n${wrap(solvedWords(answer, several, design.units))}\n`).join('') +
      asCutText(asCut, solved, design.units)
  // the picture first: where it fails no text is left behind
  const drawn = pictures === null || (await pictures.writePicture(design, solved, picture!, force))
  if (out === undefined) shell.out(text)
  else {
    writeOut(out, text, force)
    shell.out(`Wrote ${harmless(out)}.\n`)
    const stops = solved.checks.filter(({ level }) => level === 'stop')
    for (const line of showChecks(stops, several)) shell.err(`${line}\n`)
  }
  if (!drawn) shell.err(`${picture}: not drawn, since no ramp is solved\n`)
  return solved.stopped ? 1 : 0
}

const solvedWords = (answer: Answer, several: boolean, units: Units): string =>
  `solved ${several ? `${answer.ramp}: ` : ''}${answerLine(answer, units)}`
