import { readAsCut } from '../../job/as-cut-words.ts'
import { figuresJob, figuresRecord } from '../../job/figures.ts'
import { withNearMisses } from '../../job/near/near-misses.ts'
import { answerLine } from '../../job/settle/answer-words.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { checkOut, writeOut } from '../files.ts'
import { loadDesign } from '../load-design.ts'
import { forceOption, jsonOption } from '../options.ts'
import type { Shell } from '../shell.ts'
import { asCutText, figuresText } from '../words/figures-text.ts'
import { wrap } from '../wrap.ts'

const rows = [
  {
    name: 'as-cut',
    takes: 'notch',
    many: 'each',
    help: 'what was measured of a notch that is cut already (`RAMP:along=…` where there are several), one of each or one alone: `along=` from the lip, `floor=` from wall to curve on its floor or `back=` from the back edge to the wall; `down=` from the top line or `bottom=` up from the bottom edge. Says what the pipe does in it, and the shim that cures it',
  },
  jsonOption,
  { name: 'out', takes: 'file', help: 'write it to a file instead' },
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

/** What the ramp comes out as, and what will not work. Exit 1 when something stops it. */
const figures = async (file: string, options: Given<typeof rows>, shell: Shell): Promise<number> => {
  const { design, answers, text: typed } = loadDesign(file)
  if (options.out !== undefined) checkOut(options.out, options.force ?? false, file)
  // loaded here, so that what draws no picture starts without it
  const pictures = options.picture === undefined ? null : await import('../pictures/picture.ts')
  pictures?.checkPicture(options.picture!, options.force ?? false, file)
  const { cuts } = done(readAsCut(options.asCut ?? [], design))
  const { progress } = shell
  const job = withNearMisses(figuresJob(design, cuts, answers), typed, design, (ramp, of) =>
    progress?.at(ramp, of, 'near misses: ramp'),
  )
  progress?.end()
  const { solved, asCut } = job
  const text = options.json
    ? `${JSON.stringify(figuresRecord(design, job), null, 2)}\n`
    : figuresText(design, job) +
      answers.map((answer) => `\n${wrap(`solved ${answerLine(answer, design.units)}`)}\n`).join('') +
      asCutText(asCut, solved, design.units)
  if (options.out === undefined) shell.out(text)
  else writeOut(options.out, text, options.force ?? false)
  if (pictures && !(await pictures.writePicture(design, solved, options.picture!, options.force ?? false)))
    shell.err(`${options.picture}: not drawn, since no ramp is solved\n`)
  return solved.stopped ? 1 : 0
}
