import { curvedOf } from '../../../design/kind-traits.ts'
import { ownUnits } from '../../../length/own-units.ts'
import { revealWords } from '../../../ramp/check/reveal-words.ts'
import { pipeDrills } from '../../../ramp/frame/pipe.ts'
import { airToLip, insideEdge, pipeEdges } from '../../../ramp/frame/pipe-timber.ts'
import { pilotDrill } from '../../../ramp/frame/screw-lengths.ts'
import type { SolvedQuarter } from '../../../ramp/ramp.ts'
import { screwHead } from '../../../ramp/screws/screw-sort.ts'
import { isPacked } from '../../../stock/list/packing-lines.ts'
import { blockedLength, blockedScrews } from '../../../stock/screws.ts'
import { lipSection } from '../../views/lip-section.ts'
import { pipeView } from '../../views/pipe-view.ts'
import { sectionNumber } from '../../views/plan-view.ts'
import { type Block, caution, check, head, named, part, step, words } from '../block.ts'
import { type Book, leastShare, ofRamp, screwsOf } from '../book.ts'
import { figure } from '../figure.ts'
import type { Section } from '../pages.ts'
import { checksOf } from './framing.ts'

export const coping = (book: Book): Section | null => {
  const piped = curvedOf(book.solved.ramps).filter((ramp) => ramp.coping && ramp.pipe)
  if (piped.length === 0) return null
  return {
    name: 'coping',
    title: 'Coping',
    blocks: [
      head('Coping', book.width),
      ...piped.flatMap((ramp, i) =>
        copingOf(book, ramp, piped.slice(0, i).find((one) => alike(one, ramp)) ?? null),
      ),
    ],
  }
}

/** Whether two pipes are drilled and laid in the same way. */
const alike = (a: SolvedQuarter, b: SolvedQuarter): boolean =>
  a.coping!.outside === b.coping!.outside &&
  a.design.coping?.material === b.design.coping?.material &&
  a.pipe!.pieces.length === 1 &&
  b.pipe!.pieces.length === 1

/** `told`: a ramp whose pipe was told before, which this one is drilled and laid like. */
const copingOf = (book: Book, ramp: SolvedQuarter, told: SolvedQuarter | null): readonly Block[] => {
  const { width, units, show, fine } = book
  const own = ramp.coping!
  const pipe = ramp.pipe!
  const plastic = ramp.design.coping?.material === 'plastic'
  const [screw] = screwsOf(book, ramp, 'pipe')
  // the lip is sawn away with the notch
  const seated =
    ramp.design.coping?.seat === 'round'
      ? 'down on their floor'
      : 'against their wall and down on their floor'
  let number = 0
  const next = (said: string): Block => step(++number, said, width)
  const packing = packingWords(book, ramp)
  const packingSteps = (): readonly Block[] => (packing ? [next(packing)] : [])
  const pipeSteps = (): readonly Block[] => [
    words(
      `For this: the pipe; ${pipe.holes.length} screws${screw?.length ? ` of ${book.screw('pipe', screw.length)}, ${screwHead('pipe')}` : ''}.`,
      width,
    ),
    next(
      `Lay the sawn pipe, ${fine(own.outside)} outside and ${show(pipe.length)} long${pipe.pieces.length > 1 ? `, in ${pipe.pieces.length} pieces of ${pipe.pieces.map(({ length }) => show(length)).join(', ')}` : ''}, on two blocks and draw one straight line along it: all holes lie on that line.`,
    ),
    next(
      `Punch and drill at ${pipe.holes.map(show).join(', ')} from its left end: ${ownUnits(pipeDrills.near, units)} through the near wall only, ${ownUnits(pipeDrills.far, units)} through the far wall. ${apartWords(book, ramp)}${plastic ? ' A plastic pipe moves with the heat: make slots of all small holes but the middle one.' : ''}`,
    ),
    ...packingSteps(),
    next(
      `Lay it in the notches, ${seated}, the large holes up. Drill ${ownUnits(pilotDrill, units)} with the long bit, as deep as the screw, straight down through each small hole, into ${woodWords(book, ramp)} Then drive one screw down through it, ${pipe.holes.length} in all. Its head sits inside, on the far wall; the large holes stay open. File what a hand can feel.`,
    ),
  ]
  const againSteps = (): readonly Block[] => [
    next(
      `As for ${told!.name}: one line along the pipe, ${fine(own.outside)} outside and ${show(pipe.length)} long; punch and drill on it at ${pipe.holes.map(show).join(', ')} from its left end.`,
    ),
    ...packingSteps(),
    next(
      `Lay it in the notches, ${seated}, the large holes up; drill with the long bit and screw it down into ${woodWords(book, ramp)} ${pipe.holes.length} screws${screw?.length ? ` of ${book.screw('pipe', screw.length)}` : ''}.`,
    ),
  ]
  return [
    part(ofRamp(book, 'The lip', ramp), width),
    figure(
      ofRamp(book, `Section ${sectionNumber}–${sectionNumber} at the lip, between two sides`, ramp),
      (ratio) => lipSection(ramp, units, ratio, screw?.length ?? null),
      book,
      // at half size, whatever else is made smaller
      { width, height: 130 },
      { width: 230, height: 165 },
    ),
    named(
      `pipe ${ramp.name}`,
      figure(
        ofRamp(book, 'The pipe from above, its holes from the left end', ramp),
        (ratio) => pipeView(pipe, own.outside, units, ratio),
        book,
        { width, height: 55 * Math.max(leastShare, book.share) },
        { width: pipe.length, height: own.outside },
      ),
    ),
    ...(told
      ? againSteps()
      : [
          caution(
            `Sawn pipe and drilled holes are sharp: file both ends.${plastic ? '' : ' Zinc-coated pipe gives off toxic fume when it is heated or welded: leave that to a licensed shop.'}`,
            width,
          ),
          ...pipeSteps(),
        ]),
    check(`The pipe stands ${revealWords(own, ramp.design, fine)}.`, width),
    ...checksOf(book, ramp, ['pipe-joint', 'pipe-hole', 'pipe-moves']),
  ]
}

/** Nearer to a face of its timber a screw splits the wood unless it is drilled first, mm; less what a printed figure is rounded by. */
const nearFace = insideEdge.wanted - 0.05

/** What the screws go into, and where. */
const woodWords = (book: Book, ramp: SolvedQuarter): string => {
  const at = ramp.deckTimbers.findIndex(({ role }) => role === 'pipe')
  const timber = ramp.deckTimbers[at]
  if (!timber)
    return packingWords(book, ramp) ? 'the wood under the pipe, packing and all.' : 'the wood under the pipe.'
  const { front, rear } = pipeEdges(ramp.coping!, timber)
  const name = `timber ${ramp.studs.length + at + 1}`
  return `${name}: they enter it ${book.show(front)} behind its front face${Math.abs(front - rear) < 1 ? ', in its middle' : ''}.${
    Math.min(front, rear) < nearFace
      ? ' That is near its edge: drill the full length of the screw, and clamp a block to that face while you do, so that it does not split.'
      : ''
  }`
}

/** What fills the air under the notch's floor before the pipe lies there; null where its screws meet wood at once. */
const packingWords = (book: Book, ramp: SolvedQuarter): string | null => {
  const { solved, fine, units } = book
  if (!isPacked(solved, ramp.name)) return null
  const air = airToLip(ramp.coping!, ramp.studs, ramp.design, units)
  const lip = ramp.studs.findIndex(({ role }) => role === 'lip')
  const count = ramp.pipe!.holes.length
  return air === null
    ? `Before it is laid, where each screw goes: cut ${count} blocks of offcut to fill what is free under the notch's floor, tops level with it, as thick as a timber, and screw them to ${lip < 0 ? 'the sides' : `stud ${lip + 1}`}, ${blockedScrews} screws of ${book.screw('pipe blocks', blockedLength(ramp.design, units))} in each.`
    : `Before it is laid, where each screw goes: glue ${count} pieces of offcut on stud ${lip + 1}, planed to its slope, ${fine(air)} high under the pipe's middle, their tops level with the notch's floor.`
}

/** Why no hole need stand in the middle. */
const apartWords = ({ show }: Book, { design, pipe }: SolvedQuarter): string => {
  const { ends, every } = design.coping!.holes
  const { holes, length } = pipe!
  const stepped = holes.slice(0, -1).every((at, i) => Math.abs(at - ends - i * every) < 0.5)
  return holes.length > 2 && stepped && Math.abs(length - holes.at(-1)! - ends) < 0.5
    ? `They are ${show(every)} apart from the left on, the outer ones ${show(ends)} from the ends: the last gap is what is left.`
    : ''
}
