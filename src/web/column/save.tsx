import { kept } from '../kept.ts'
import { download } from '../state/download.ts'
import { linkTo } from '../state/link.ts'
import type { View } from '../state/model.ts'
import type { Saving } from '../state/use-saving.ts'
import type { Format, Lay, Thing } from '../worker/messages.ts'

interface SaveProps {
  readonly view: View
  readonly lay: Lay
  readonly stopped: boolean
  readonly busy: boolean
  readonly save: Saving['save']
  readonly say: Saving['say']
}

interface Row {
  readonly id: string
  readonly thing: Thing
  /** of the pages these alone */
  readonly only?: string
  readonly words: string
  readonly formats: readonly Format[]
  /** what a stop does not hinder */
  readonly always?: true
}

const rows: readonly Row[] = [
  { id: 'set', thing: 'pages', words: 'all pages of the set', formats: ['pdf'] },
  { id: 'square', thing: 'square', words: 'the test square alone', formats: ['pdf'], always: true },
  { id: 'trial', thing: 'pages', only: 'trial', words: 'the lip trial alone', formats: ['pdf'] },
  { id: 'strips', thing: 'pages', only: 'strips', words: 'the story strips alone', formats: ['pdf'] },
  { id: 'map', thing: 'map', words: 'the map, for the phone', formats: ['png'] },
  { id: 'booklet', thing: 'booklet', words: 'the booklet', formats: ['pdf'] },
  { id: 'cuts', thing: 'cuts', words: 'the cuts', formats: ['pdf', 'svg', 'csv', 'json', 'txt'] },
  { id: 'list', thing: 'list', words: 'the shopping list', formats: ['pdf', 'csv', 'json', 'txt'] },
  { id: 'offsets', thing: 'offsets', words: 'the offsets', formats: ['pdf', 'csv', 'json', 'txt'] },
  {
    id: 'picture',
    thing: 'picture',
    words: 'the picture from the side',
    formats: ['pdf', 'svg', 'png'],
    always: true,
  },
  { id: 'figures', thing: 'figures', words: 'the figures', formats: ['json'], always: true },
]

/** What leaves the page: files on this machine, and nothing else. */
export const Save = kept(({ view, lay, stopped, busy, save, say }: SaveProps) => {
  const copyLink = async (): Promise<void> => {
    const link = linkTo(view.text, location.href)
    history.replaceState(null, '', link)
    try {
      await navigator.clipboard.writeText(link)
      say('the link with this design is copied')
    } catch {
      say('the link with this design stands in the address above: copy it there')
    }
  }
  const unread = view.problems.length > 0 || view.good === null
  return (
    <section class="save" aria-label="save">
      <h2>save</h2>
      {rows.map(({ id, thing, only, words, formats, always }) => (
        <div class="row" key={id}>
          <span>{words}</span>
          {formats.map((format, i) => (
            <button
              type="button"
              key={format}
              id={i === 0 ? `save-${id}` : `save-${id}-${format}`}
              aria-label={`save ${words} as ${format.toUpperCase()}`}
              disabled={busy || unread || (stopped && !always)}
              onClick={() =>
                save({
                  kind: 'save',
                  thing,
                  format,
                  text: view.text,
                  lay,
                  ...(only !== undefined && { only }),
                })
              }
            >
              {format.toUpperCase()}
            </button>
          ))}
        </div>
      ))}
      <div class="row">
        <span>the design</span>
        <button
          type="button"
          id="save-design"
          aria-label="save the design as YAML"
          onClick={() => download('ramp.yaml', 'application/yaml', view.text)}
        >
          YAML
        </button>
        <button type="button" id="copy-link" onClick={copyLink}>
          copy a link
        </button>
      </div>
    </section>
  )
})
