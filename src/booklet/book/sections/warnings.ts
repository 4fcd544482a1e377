import { capital } from '../../../length/capital.ts'
import { wordList } from '../../../length/word-list.ts'
import { alikeChecks } from '../../../ramp/check/alike.ts'
import { type Block, caution, check, part } from '../block.ts'
import type { Book } from '../book.ts'

/** All that the figures warn of: it is mended in the design, or meant so, before the first cut. What holds for several ramps is said once. */
export const warnings = ({ solved, several, width }: Book): readonly Block[] => {
  const alike = alikeChecks(solved.checks.filter(({ level }) => level === 'warn'))
  if (alike.length === 0) return []
  return [
    part('What to watch in this design', width),
    ...alike.map(([{ message }, ramps]) => {
      const named = several ? wordList(ramps.filter((ramp) => ramp !== '')) : ''
      const said = message.replaceAll('`', '')
      return caution(named === '' ? `${capital(said)}.` : `${capital(named)}: ${said}.`, width)
    }),
    check('Each of these is mended in the design, or is meant to be so.', width),
  ]
}
