import { useState } from 'preact/hooks'
import type { PaperName } from '../../index.ts'
import { kept } from '../kept.ts'
import { download } from '../state/download.ts'
import { useAnswer } from '../state/use-answer.ts'
import { type Measures, usePrinter } from '../state/use-printer.ts'
import type { KeptPrinters } from '../state/use-printers.ts'
import type { Saving } from '../state/use-saving.ts'
import type { Asking } from '../worker/ask.ts'
import type { Lay } from '../worker/messages.ts'

interface PrinterProps {
  readonly lay: Lay
  readonly setLay: (lay: Lay) => void
  readonly printers: KeptPrinters
  readonly paper: PaperName
  readonly text: string
  readonly asking: Asking
  readonly busy: boolean
  /** of the set; null where it cannot be saved now */
  readonly count: number | null
  readonly save: Saving['save']
}

const fields = [
  ['across', 'side of the square across the page; true is 150 mm', '150mm'],
  ['down', 'side of the square down the page; true is 150 mm', '150mm'],
  [
    'diagonals',
    'both diagonals, first A (lower left to upper right), then B; true is 212.1 mm',
    '212.1mm 212.1mm',
  ],
  ['margins', 'first printed tick of each comb: top, right, bottom, left', '4mm, 4mm, 4mm, 4mm'],
] as const

const percent = (ratio: number): string => {
  const value = (ratio - 1) * 100
  return Math.abs(value) < 0.005
    ? 'true'
    : `${Math.abs(value).toFixed(2)} % too ${value > 0 ? 'long' : 'short'}`
}

/** What the closed part says. */
export const printerLine = (profile: string | null, { all }: KeptPrinters): string => {
  if (profile !== null) return 'measured, pages are corrected'
  const [first, ...others] = Object.keys(all)
  if (first === undefined) return 'not measured yet'
  return others.length === 0
    ? `none: ${first} is measured, take it here`
    : `none: ${[first, ...others].join(', ')} are measured, take one here`
}

/** What a rule says of the printed square, turned into a correction; kept in this browser under a name. */
export const Printer = kept((props: PrinterProps) => {
  const { lay, setLay, printers, paper, text, asking, busy, count, save } = props
  const printer = usePrinter(lay, printers, paper)
  const { known, all, words, clash, measure, read, replace, forget, forgotten, again } = printer
  const effect = useAnswer(asking, 'effect', known ? { kind: 'effect', text, profile: lay.profile! } : null)
  const [name, setName] = useState('')
  const [measures, setMeasures] = useState<Measures>({})

  return (
    <div class="printer">
      <div class="row">
        <button
          type="button"
          id="square-to-measure"
          disabled={busy}
          onClick={() => save({ kind: 'save', thing: 'square', format: 'pdf', text, lay, uncorrected: true })}
        >
          save the test square
        </button>
      </div>
      <p class="help">
        print it at 100 %, measure it with a steel rule, type below what it says
        {known && `; it is printed without the correction of ${known.name}, to measure that printer anew`}
      </p>
      <div class="field">
        <label for="printer">measured printer</label>
        <select
          id="printer"
          name="printer"
          value={known?.name ?? ''}
          onChange={(event) => setLay({ ...lay, profile: all[event.currentTarget.value] ?? null })}
        >
          <option value="">none: print as it is</option>
          {Object.keys(all).map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </div>
      {known && (
        <p role="status">
          across {percent(known.across)}, down {percent(known.down)}
          {effect.answer?.lines.map((line) => (
            <span key={line} class="line">
              {line}
            </span>
          ))}
          <b class="line">The pages are corrected now: save them again, and measure their test square.</b>
        </p>
      )}
      {known && count !== null && (
        <button
          type="button"
          id="save-corrected"
          disabled={busy}
          onClick={() => save({ kind: 'save', thing: 'pages', format: 'pdf', text, lay })}
        >
          save the {count} pages again
        </button>
      )}
      <div class="field">
        <label for="printer-name">its name</label>
        <input
          id="printer-name"
          name="printer-name"
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </div>
      {fields.map(([key, help, example]) => (
        <div class="field" key={key}>
          <label for={`measure-${key}`}>{key}</label>
          <input
            id={`measure-${key}`}
            name={`measure-${key}`}
            autocomplete="off"
            placeholder={example}
            aria-describedby={`measure-${key}-help`}
            value={measures[key] ?? ''}
            onInput={(event) => setMeasures({ ...measures, [key]: event.currentTarget.value })}
          />
          <p class="help" id={`measure-${key}-help`}>
            {help}
          </p>
        </div>
      ))}
      <div class="row">
        <button type="button" id="keep-printer" onClick={() => measure(name, measures)}>
          keep this printer
        </button>
        {clash && (
          <button type="button" id="replace-printer" onClick={() => replace(clash)}>
            replace {clash.name}
          </button>
        )}
        {known && (
          <button
            type="button"
            id="save-printer"
            onClick={() => download(`${known.name}.json`, 'application/json', lay.profile!)}
          >
            save its file
          </button>
        )}
        {known && (
          <button type="button" id="forget-printer" onClick={() => forget(known)}>
            forget {known.name}
          </button>
        )}
        {forgotten && (
          <button type="button" id="printer-again" onClick={() => again(forgotten)}>
            keep {forgotten.name} again
          </button>
        )}
        <label class="file">
          open a printer's file
          <input
            type="file"
            name="printer-file"
            accept=".json"
            onChange={(event) => read(event.currentTarget.files?.[0])}
          />
        </label>
      </div>
      <p role="status" class="words">
        {words}
      </p>
    </div>
  )
})
