import { Fragment } from 'preact'
import { countWords, isCurved } from '../../index.ts'
import { kept } from '../kept.ts'
import { download } from '../state/download.ts'
import { linkTo } from '../state/link.ts'
import type { View } from '../state/model.ts'
import type { Saving } from '../state/use-saving.ts'
import { fileName } from '../words/file-name.ts'
import { type Needs, noneOf } from '../words/none-of.ts'
import { formatsOf, type Lay, type Thing } from '../worker/messages.ts'

interface SaveProps {
  readonly view: View
  readonly lay: Lay
  readonly stopped: boolean
  /** a rider can fall */
  readonly hurts: boolean
  readonly busy: boolean
  /** of the set; null while that is not known */
  readonly count: number | null
  readonly save: Saving['save']
  readonly say: Saving['say']
}

interface Row {
  readonly id: string
  readonly thing: Thing
  /** of the pages these alone */
  readonly only?: string
  readonly words: string
  /** what it is for */
  readonly use: string
  /** what a stop does not hinder */
  readonly always?: true
  /** a design without that has none of it */
  readonly needs?: Needs
}

const rows: readonly Row[] = [
  {
    id: 'set',
    thing: 'pages',
    words: 'the set',
    use: 'to print, tape and trace',
    needs: 'curve',
  },
  {
    id: 'square',
    thing: 'square',
    words: 'the test square alone',
    use: 'shows whether the printer is true',
    always: true,
  },
  {
    id: 'trial',
    thing: 'pages',
    only: 'trial',
    words: 'the lip trial alone',
    use: 'to cut and try first',
    needs: 'pipe',
  },
  {
    id: 'strips',
    thing: 'pages',
    only: 'strips',
    words: 'the story strips alone',
    use: 'studs, seams, screws, full size',
    needs: 'curve',
  },
  {
    id: 'map',
    thing: 'map',
    words: 'the map',
    use: 'for the phone, while taping',
    needs: 'curve',
  },
  {
    id: 'booklet',
    thing: 'booklet',
    words: 'the booklet',
    use: 'the whole build, in steps',
  },
  {
    id: 'cuts',
    thing: 'cuts',
    words: 'the cuts',
    use: 'what to saw from what',
  },
  {
    id: 'list',
    thing: 'list',
    words: 'the shopping list',
    use: 'what to buy, how many',
  },
  {
    id: 'offsets',
    thing: 'offsets',
    words: 'the offsets',
    use: 'to draw it without paper',
    needs: 'curve',
  },
  {
    id: 'picture',
    thing: 'picture',
    words: 'the picture from the side',
    use: 'to show or to send',
    always: true,
  },
  {
    id: 'figures',
    thing: 'figures',
    words: 'the figures',
    use: 'every number, for another program',
    always: true,
  },
]

/** Of a link to a page that was opened from the disk. */
const fileWords =
  '. It opens where this page lies at the same place on the disk, and nowhere else: to others send the design, YAML under save'

/** What leaves the page: files on this machine, and nothing else. */
export const Save = kept(({ view, lay, stopped, hurts, busy, count, save, say }: SaveProps) => {
  const said = (words: string): void => say(words, view.text)
  const copyLink = async (): Promise<void> => {
    const link = linkTo(view.text, location.href)
    if (link === null) {
      said('this design is too long for a link: save the design as a file')
      return
    }
    history.replaceState(null, '', link)
    const file = location.protocol === 'file:' ? fileWords : ''
    try {
      await navigator.clipboard.writeText(link)
      said(`the link with this design is copied${file}`)
    } catch {
      said(`the link with this design stands in the address above: copy it there${file}`)
    }
  }
  const saveDesign = (): void => {
    const title = view.good?.text === view.text ? view.good.design.title : view.said.get('title')
    const name = `${fileName(title ?? '')}.yaml`
    download(name, 'application/yaml', view.text)
    say(`${name} saved: the design, to open here again`, view.text, name)
  }
  const unread = view.problems.length > 0 || view.good === null
  const straight = view.good !== null && !view.good.design.ramps.some(isCurved)
  const told = rows.map((row) => ({ ...row, none: view.good && noneOf(row.needs, view.good.design) }))
  return (
    <section class="save" aria-label="save">
      <h2>save</h2>
      {straight && <p class="help">a flat is straight cuts: it has no pages and no curve to save</p>}
      {told.map(({ id, thing, only, words, use, always, none }, nth) => (
        <Fragment key={id}>
          {nth === 1 && <h3>more files</h3>}
          <div class="row">
            <span>
              {nth === 0 ? <b>{words}</b> : words}
              {nth === 0 && count !== null ? `, ${countWords(count, 'page')}` : ''}{' '}
              <small>{none ?? use}</small>
            </span>
            <span class="formats">
              {formatsOf[thing].map((format, i) => (
                <button
                  type="button"
                  key={format}
                  // what stands in the way is told louder than this
                  class={nth === 0 && !hurts && !straight ? 'main' : undefined}
                  id={i === 0 ? `save-${id}` : `save-${id}-${format}`}
                  aria-label={`save ${words} as ${format.toUpperCase()}`}
                  disabled={busy || unread || (stopped && !always) || none !== null}
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
            </span>
          </div>
        </Fragment>
      ))}
      <div class="row">
        <span>
          the design <small>to open here again</small>
        </span>
        <span class="formats">
          <button type="button" id="save-design" aria-label="save the design as YAML" onClick={saveDesign}>
            YAML
          </button>
          <button type="button" id="copy-link" onClick={copyLink}>
            copy a link
          </button>
        </span>
      </div>
    </section>
  )
})
