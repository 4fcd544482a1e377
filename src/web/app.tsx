import { useEffect, useMemo, useReducer, useRef, useState } from 'preact/hooks'
import { isCurved } from '../index.ts'
import { Checks } from './column/checks.tsx'
import { Choose } from './column/choose.tsx'
import { Paper, paperLine } from './column/paper.tsx'
import { Printer, printerLine } from './column/printer.tsx'
import { Save } from './column/save.tsx'
import { SetFile } from './column/set-file.tsx'
import { TextPart } from './column/text-part.tsx'
import { SideDrawing } from './drawing/side-drawing.tsx'
import { FilePart, RampParts } from './fields/key-parts.tsx'
import { Part } from './fields/part.tsx'
import { Next } from './next.tsx'
import { PageView } from './page-view.tsx'
import { Ramps } from './ramps.tsx'
import { actionsOf } from './state/actions.ts'
import { type Filled, firstHistory, nextView, step, type View } from './state/model.ts'
import { useAfter } from './state/use-after.ts'
import { useAnswer } from './state/use-answer.ts'
import { useFiles } from './state/use-files.ts'
import { useKept } from './state/use-kept.ts'
import { useLeaf } from './state/use-leaf.ts'
import { useLink } from './state/use-link.ts'
import { usePinned } from './state/use-pinned.ts'
import { useAlarms, usePointing } from './state/use-pointing.ts'
import { usePrinters } from './state/use-printers.ts'
import { useSaving } from './state/use-saving.ts'
import { useWindow } from './state/use-window.ts'
import { Top } from './top.tsx'
import { useFocus } from './use-focus.ts'
import { hurts } from './words/hurts.ts'
import type { Asking } from './worker/ask.ts'
import type { Lay } from './worker/messages.ts'

/** Workers, so that what takes long holds up nothing else. */
export interface Askings {
  /** what follows each key */
  readonly counting: Asking
  /** checks, pages: asked while one types too */
  readonly looking: Asking
  /** for what is saved: it can be stopped without ending the others */
  readonly saving: Asking
}

interface AppProps {
  readonly start: View
  /** one's own design, where another's is shown in its place: the way back; null where there is none */
  readonly own: string | null
  /** the last design that could be read: the way back where this one cannot */
  readonly before: string | null
  readonly startLay: Lay
  readonly given: string
  readonly askings: Askings
}

const stockKeys = ['stock', 'prices', 'space'] as const
const titleKeys = ['title', 'units'] as const
const noDoubts: readonly string[] = []

const tornWords =
  'The link is torn: it holds no whole design. What is shown is another one; copy the link anew, or ask for the design as a file.'

/** The whole page: one drawing, one column. All that it shows follows from the text of the design. */
export const App = ({ start, own, before: whole, startLay, given, askings }: AppProps) => {
  const { counting, looking, saving: writing } = askings
  const [history, take] = useReducer(step, start, ({ text, problems }) =>
    firstHistory(text, own ?? (problems.length > 0 ? whole : null), startLay),
  )
  const { now: text, lay } = history
  const [filled, setFilled] = useState<Filled | null>(null)
  const before = useRef<View | null>(start)
  const view = useMemo(() => nextView(text, before.current, filled), [text, filled])
  before.current = view
  const [asked, setRamp] = useState(0)
  // one that was taken back, is not in another design or not yet drawn is not shown
  const shown = view.good?.design.ramps.length ?? 1
  const ramp = asked < Math.min(shown, view.read?.ramps.length ?? shown) ? asked : 0
  // painted one after the other: the frame, the drawing, the fields
  const [painted, setPainted] = useState(0)
  useEffect(() => {
    if (painted < 2) setPainted(painted + 1)
  }, [painted])

  const keeps = useKept({ given, text, whole: view.good?.text ?? whole, lay })

  const read = view.problems.length === 0
  const drawn = read && view.good?.text === text ? view.good : null
  const drawable = drawn !== null && !drawn.drawn.stopped
  const counts = useAnswer(counting, 'counts', drawable ? { kind: 'counts', text, lay } : null)
  // what takes longer follows when the counts are there
  const checks = useAnswer(looking, 'checks', read && !counts.waits ? { kind: 'checks', text } : null)
  const plan = useAnswer(looking, 'plan', drawable && !counts.waits ? { kind: 'plan', text, lay } : null)
  useEffect(() => {
    if (checks.answer !== null && !checks.old && checks.answer.filled !== text)
      setFilled({ text, filled: checks.answer.filled })
  }, [checks])
  const stopped = !drawable || (!checks.old && checks.answer?.stopped === true)

  const after = useAfter(looking, text, checks)
  const { pointed, pointField, point, goTo } = usePointing(view, setRamp)
  const actions = useMemo(() => actionsOf(take, pointField), [take])
  const { setText, setLay } = actions
  const found = checks.old ? [] : (checks.answer?.checks ?? [])
  const watched = found.filter(({ level }) => level === 'warn')
  const alarms = useAlarms(checks, found, view.good?.design.ramps[ramp]?.name)
  const printers = usePrinters((next) =>
    take({
      kind: 'lay',
      next: (now) => {
        const profile = next(now.profile)
        return profile === now.profile ? now : { ...now, profile }
      },
    }),
  )
  const files = useFiles(writing, setText, printers.keep)
  const saving = useSaving(writing, text)

  const stage = usePinned()

  useWindow(take, files.open)
  useFocus()
  const torn = useLink(text, take)

  const paper = view.said.get('paper') ?? view.good?.design.paper ?? ''
  const count = counts.answer?.counts[counts.answer.cover]
  const planned = plan.old ? null : (plan.answer?.plan ?? null)
  const refused = counts.refused ?? plan.refused
  const doubts = plan.old ? noDoubts : (plan.answer?.warnings ?? noDoubts)
  // a margin that is half typed has no pages either, but will: only what has no curve is known to have none
  const straight = view.read?.ramps.some(isCurved) === false
  const leaf = useLeaf(straight ? 0 : (plan.answer?.plan.pages.length ?? null))
  return (
    <>
      <Top
        title={view.said.get('title') ?? 'traceply'}
        back={history.past.length > 0}
        forward={history.future.length > 0}
        take={take}
        open={files.open}
        keeps={keeps}
        words={torn ? tornWords : files.words}
      />
      {files.set && (
        <SetFile
          set={files.set}
          profile={lay.profile}
          asking={writing}
          close={files.closeSet}
          takeDesign={(text, words) => take({ kind: 'laid', text, words })}
        />
      )}
      <main>
        <div class="side">
          <div class="stage" ref={stage}>
            {painted === 0 ? null : leaf.page === null ? (
              <SideDrawing
                view={view}
                ramp={ramp}
                setRamp={setRamp}
                actions={actions}
                plan={drawable ? planned : null}
                showPage={leaf.turn}
                pointed={pointed}
                alarms={alarms}
                back={history.past.length > 0}
              />
            ) : (
              <PageView
                text={text}
                lay={lay}
                page={leaf.page}
                planned={plan.answer?.plan.pages[leaf.page - 1]}
                count={plan.answer?.plan.pages.length ?? leaf.page}
                turn={leaf.turn}
                barred={stopped || refused !== null || plan.old}
                saving={saving}
                asking={looking}
                close={leaf.close}
              />
            )}
          </div>
          <Next
            view={view}
            lay={lay}
            stopped={stopped}
            refused={refused}
            watched={watched.length > 0}
            offered={watched.some(({ offers }) => offers.length > 0)}
            hurts={found.some(hurts)}
            plan={planned}
            doubts={doubts}
            saving={saving}
          />
        </div>
        <div class="column">
          {painted === 2 && (
            <>
              <Checks
                view={view}
                ramp={ramp}
                heard={checks}
                after={after}
                take={actions.takeOffer}
                mend={actions.mend}
                point={point}
                goTo={goTo}
              />
              <FilePart name="title and units" keys={titleKeys} view={view} actions={actions} />
              <Part name="help me choose" line="from what you know">
                <Choose units={view.good?.design.units ?? 'mm'} text={text} asking={writing} take={setText} />
              </Part>
              <RampParts view={view} ramp={ramp} actions={actions} />
              <Ramps view={view} ramp={ramp} setRamp={setRamp} actions={actions} />
              <Part name="paper" line={paperLine(paper, count, refused)} old={counts.old && drawable}>
                <Paper
                  view={view}
                  actions={actions}
                  counts={counts}
                  plan={plan}
                  lay={lay}
                  setLay={setLay}
                  showPage={leaf.turn}
                />
              </Part>
              <Part name="printer" line={printerLine(lay.profile, printers)}>
                <Printer
                  lay={lay}
                  setLay={setLay}
                  printers={printers}
                  paper={view.good?.design.paper ?? 'a4'}
                  text={text}
                  asking={looking}
                  busy={saving.state.kind === 'busy'}
                  count={drawable && !stopped ? (planned?.pages.length ?? null) : null}
                  save={saving.save}
                />
              </Part>
              <FilePart name="buy and saw" keys={stockKeys} view={view} actions={actions} />
              <Save
                view={view}
                lay={lay}
                stopped={stopped}
                hurts={found.some(hurts)}
                busy={saving.state.kind === 'busy'}
                count={planned?.pages.length ?? null}
                save={saving.save}
                say={saving.say}
              />
              <Part name="the file as text" line="all that is shown here, to copy or paste">
                <TextPart text={text} setText={setText} />
              </Part>
            </>
          )}
        </div>
      </main>
    </>
  )
}
