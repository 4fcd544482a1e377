import { randomFrom } from '../support/random.ts'
import { jobOf } from '../tape-up/jobs.ts'
import type { Job } from '../tape-up/plot.ts'

/** Widths of papers less what a page must carry of its own, mm: margins and overlap share it. */
const free = { letter: 155, a4: 150, legal: 155, tabloid: 219, a3: 237, a2: 360, a1: 534, a0: 781 } as const

const titles = [
  'W'.repeat(200),
  'Low ramp by the slipway '.repeat(8).trim(),
  `${'ż '.repeat(99)}ż`,
  'ボート小屋'.repeat(40),
  '(((\\)))) % ( \\\\ )',
  'Rampe für das Bootshaus – “niedrig”',
]

/** A job of the generator; each third one has what nobody would choose: long titles, wide margins, pipes thin and thick. */
export const hardJob = (number: number): Job => {
  const job = jobOf(number)
  const more = { ...job, strips: number % 5 === 2, pack: number % 7 === 3 }
  if (number % 3 !== 1) return more
  const random = randomFrom(number * 613 + 5)
  const between = (low: number, high: number): number => Math.round((low + (high - low) * random()) * 10) / 10
  const among = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)]!
  const unit = /^units: in/m.test(job.text) ? 25.4 : 1
  const show = (mm: number): string => (mm / unit).toFixed(unit === 1 ? 1 : 3)
  const overlap = job.overlap ?? 12
  const most = Math.min(60, (free[job.paper] - overlap) / 2)
  const wide = between(0, most)
  const seat = among(['square', 'round'])
  const coping = among([
    `{ outside: ${show(between(20, 45))}, up: ${show(between(0, 20))}, out: ${show(between(-8, 20))}, seat: ${seat} }`,
    `{ outside: ${show(between(76, 120))}, up: ${show(between(0, 30))}, out: ${show(between(0, 30))}, seat: ${seat} }`,
  ])
  const text = job.text
    .replace(/^title: .*$/m, () => `title: ${JSON.stringify(among(titles))}`)
    .replace(/ coping: \{.*\}$/m, ` coping: ${coping}`)
  return {
    ...more,
    text,
    ...(random() < 0.6 ? { margins: { top: wide, right: wide, bottom: wide, left: wide } } : {}),
  }
}
