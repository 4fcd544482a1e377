import type { Problem, Typing } from '../../index.ts'
import type { PlaceName } from '../words/check-places.ts'
import type { Lay } from '../worker/messages.ts'
import type { Step } from './model.ts'

/** What one does to the design; the same functions as long as the page is open. */
export interface Actions {
  readonly setText: (text: string, of?: string | null) => void
  readonly setLay: (lay: Lay) => void
  /** a key of the file is set; `null` takes it out */
  readonly setKey: (path: string, value: string | null) => void
  readonly takeOffer: (offer: readonly Typing[]) => void
  readonly mend: (problem: Problem) => void
  /** what was typed or dragged is done with */
  readonly rest: () => void
  /** what was typed in a key since the last rest is taken back */
  readonly takeBack: (path: string) => void
  /** what a field that is typed in belongs to */
  readonly pointField: (place: PlaceName | null) => void
}

export const actionsOf = (
  take: (step: Step) => void,
  pointField: (place: PlaceName | null) => void,
): Actions => ({
  setText: (text, of = null) => take({ kind: 'text', text, of }),
  setLay: (lay) => take({ kind: 'lay', next: () => lay }),
  setKey: (path, value) => take({ kind: 'key', path, value }),
  takeOffer: (offer) => take({ kind: 'offer', offer }),
  mend: (problem) => take({ kind: 'mend', problem }),
  rest: () => take({ kind: 'rest' }),
  takeBack: (of) => take({ kind: 'back', of }),
  pointField,
})
