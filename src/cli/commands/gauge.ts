import type { Design } from '../../design/design.ts'
import { inch } from '../../geometry/inch.ts'
import { gaugeJob } from '../../job/proving/gauge.ts'
import { type PrinterEffect, printerEffects } from '../../job/proving/printer-effect.ts'
import { isRefusal } from '../../job/refusal.ts'
import { showLength, type Units } from '../../length.ts'
import { boundWords } from '../../page/proof/budget.ts'
import { readingError } from '../../printer/gauge.ts'
import { type Profile, profileRecord } from '../../printer/profile.ts'
import { readingLines } from '../../printer/reading-lines.ts'
import { printerUncertainty } from '../../printer/uncertainty.ts'
import { command, type Given } from '../command.ts'
import { done } from '../done.ts'
import { Failure } from '../failure.ts'
import { loadDesign } from '../load-design.ts'
import { paperWords, profilesOption } from '../options.ts'
import { forgetProfile, listProfiles, loadProfile, profilesFolder, saveProfile } from '../profiles.ts'
import type { Shell } from '../shell.ts'
import { showBriefly } from '../words/show-checks.ts'
import { typedName } from '../words/typed-name.ts'
import { wrap } from '../words/wrap.ts'

const rows = [
  {
    name: 'across',
    takes: 'length',
    many: 'each',
    help: 'side of the square across the page; `238.1mm/240mm` for a ruler; several with commas, or repeat',
  },
  {
    name: 'down',
    takes: 'length',
    many: 'each',
    help: 'side of the square down the page; several with commas, or repeat',
  },
  {
    name: 'diagonals',
    takes: 'lengths',
    many: 'rest',
    help: 'both diagonals, A (lower left to upper right) then B, with a comma or a blank between; repeat for more',
  },
  {
    name: 'margins',
    takes: 'lengths',
    help: 'first printed tick of each comb: one length for all, or four with commas: top, right, bottom, left; `4mm,4mm,12mm,4mm`',
  },
  {
    name: 'paper',
    takes: 'name',
    help: `paper that was measured: ${paperWords}; else that of the design behind \`--for\`, else A4; which one was taken is said`,
  },
  { name: 'for', takes: 'design', help: 'tell what the printer would do to this ramp' },
  profilesOption,
  { name: 'list', help: 'list the printers that are known' },
  { name: 'show', takes: 'name', help: 'show one of them' },
  { name: 'forget', takes: 'name', help: 'remove one of them' },
  { name: 'force', help: 'replace a profile that exists' },
  { name: 'json', help: 'print JSON alone' },
] as const

type GaugeOptions = Given<typeof rows>

export const gaugeCommand = command({
  name: 'gauge',
  help: 'turn measurements of the printed square into a correction',
  args: [{ name: 'name', optional: true, help: 'your name for this printer, paper and tray' }],
  options: rows,
  run: ([name], given, shell) => gauge(name, given, shell),
})

/** Measurements of a printed test square become a profile; or the profiles are listed, shown, forgotten. */
const gauge = (name: string | undefined, options: GaugeOptions, shell: Shell): number => {
  const folder = profilesFolder(options.profiles)
  if (options.list) {
    const names = listProfiles(folder)
    if (options.json) shell.out(`${JSON.stringify(names)}\n`)
    else
      shell.out(
        names.length > 0
          ? `${names.join('\n')}\n`
          : `no printers in ${folder} yet; measure one: traceply square --help\n`,
      )
    return 0
  }
  if (options.forget !== undefined) {
    const file = forgetProfile(options.forget, folder)
    shell.out(options.json ? `${JSON.stringify({ forgot: file })}\n` : `forgot ${file}\n`)
    return 0
  }
  // read first: nothing is kept where the design is not good
  const design = options.for === undefined ? null : loadDesign(options.for).design
  if (options.show !== undefined) {
    const profile = loadProfile(options.show, options.profiles)
    report(profile, design, options, shell)
    if (!options.json)
      shell.out(
        `${profile.margins === null ? 'its margins are not measured' : `its least margins: ${marginWords(profile.margins)}`}\n`,
      )
    return 0
  }
  if (name === undefined)
    throw new Failure(
      2,
      'say a name for the printer, e.g. traceply gauge study-laser --across 149.6mm --down 150.4mm',
    )
  const before = options.force ? knownBefore(name, folder) : null
  const profile = done(gaugeJob(name, options, design?.paper ?? 'a4', before))
  const file = saveProfile(profile, folder, options.force ?? false)
  report(profile, design, options, shell)
  if (!options.json)
    shell.out(
      [
        ...(options.paper === undefined ? [assumedPaper(profile.paper, design !== null)] : []),
        ...(before !== null && options.margins === undefined ? marginsLeft(before, profile) : []),
        `kept in ${file}`,
        `next: traceply plot DESIGN --printer ${name}${design && design.paper !== profile.paper ? ` --paper ${profile.paper}` : ''}${options.profiles === undefined ? '' : ` --profiles ${typedName(options.profiles)}`}`,
        '',
      ].join('\n'),
    )
  return 0
}

/** The profile that is replaced; null where there is none, or a damaged one. */
const knownBefore = (name: string, folder: string): Profile | null => {
  if (!listProfiles(folder).includes(name)) return null
  try {
    return loadProfile(name, folder)
  } catch {
    return null
  }
}

/** What became of the margins of the profile before, where no new ones were said. */
const marginsLeft = (before: Profile, { margins, paper }: Profile): readonly string[] => {
  if (before.margins === null) return []
  if (margins === null)
    return [`the margins were measured on ${before.paper}, not on ${paper}: add --margins`]
  return [`margins as measured before: ${marginWords(margins)}`]
}

const marginWords = ({ top, right, bottom, left }: NonNullable<Profile['margins']>): string =>
  `${[top, right, bottom, left].map(plainMm).join(', ')} mm (top, right, bottom, left)`

const plainMm = (mm: number): string => `${Number(mm.toFixed(2))}`

/** Which paper was taken where none was said, and what to type if it was another. */
const assumedPaper = (paper: string, ofDesign: boolean): string => {
  const why = ofDesign ? 'the paper of the design' : 'as no paper was said'
  const other = paper === 'a4' ? 'letter' : 'a4'
  return `for ${paper}, ${why}; if it was ${other}: the same again with --paper ${other} --force`
}

const percent = (ratio: number): string => {
  const value = (ratio - 1) * 100
  if (Math.abs(value) < 0.005) return 'true'
  return `${Math.abs(value).toFixed(2)} % too ${value > 0 ? 'long' : 'short'}`
}

const report = (
  profile: Profile,
  design: Design | null,
  options: Pick<GaugeOptions, 'json' | 'for'>,
  shell: Shell,
): void => {
  const uncertainty = printerUncertainty(profile.readings)
  const told = design ? printerEffects(design, profile) : { effects: [] }
  const effects = isRefusal(told) ? [] : told.effects
  if (options.json) {
    shell.out(
      `${JSON.stringify({ ...profileRecord(profile), uncertainty, ...(design ? { effects } : {}) }, null, 2)}\n`,
    )
    return
  }
  const lean =
    profile.readings.diagonals.length === 0
      ? 'its lean not measured'
      : Math.abs(profile.skewDegrees) < 0.005
        ? 'upright'
        : `leans ${Math.abs(profile.skewDegrees).toFixed(2)}° to the ${profile.skewDegrees > 0 ? 'right' : 'left'}`
  const lines = [
    `${profile.name} on ${profile.paper}: across ${percent(profile.across)}, down ${percent(profile.down)}, ${lean}`,
    `measured with a rule good to ${readingError} mm: ${readingLines(profile.readings).join('; ')}`,
    ...(profile.readings.diagonals.length > 0
      ? []
      : ['the diagonals are not measured, so a leaning print goes unseen: add --diagonals A B']),
  ]
  for (const effect of effects) lines.push(...effectLines(effect, design!.units).map((line) => wrap(line)))
  if (isRefusal(told))
    lines.push(
      'the design cannot be laid out, so nothing is told of it; `traceply figures` shows what is solved',
      ...(told.refused === 'stop' ? showBriefly(told.checks, design!.ramps.length > 1, options.for!) : []),
      ...('faults' in told ? told.faults : []),
    )
  shell.out(`${lines.join('\n')}\n`)
}

/** Rounded up to 1/32 in, so that it holds. */
const inchBound = (mm: number): string =>
  showLength((Math.ceil((32 * mm) / inch - 1e-6) * inch) / 32, 'in', { unit: true })

const effectLines = (
  { ramp, cover, radius, uncorrected, corrected }: PrinterEffect,
  units: Units,
): readonly string[] => {
  const show = (mm: number): string => showLength(mm, units, { decimals: 1, unit: true })
  const { lipUp, lipBack, toeRadius, lipRadius } = uncorrected
  return [
    `${ramp}, uncorrected, its pages laid as plot lays them here (${cover}): seen from the toe the lip comes out ` +
      `${show(Math.abs(lipUp))} too ${lipUp < 0 ? 'low' : 'high'} and ${show(Math.abs(lipBack))} too far ${lipBack < 0 ? 'forward' : 'back'}; ` +
      `the side's radius of ${show(radius)} becomes ${show(toeRadius)} at the toe, ${show(lipRadius)} at the lip`,
    `${ramp}, corrected: the lip lies within ${units === 'mm' ? `${corrected.likely.toFixed(1)} mm` : inchBound(corrected.likely)} as a rule, ${units === 'mm' ? `${boundWords(corrected.worst)} mm` : inchBound(corrected.worst)} if every reading errs the same way; the distances on the map find more than that`,
  ]
}
