import type { Drawing } from '../../drawing/drawing.ts'
import type { Box } from '../../geometry/bounds.ts'
import { type PanelPagesFacts, panelPages } from './panel-page.ts'
import { type TimberPagesFacts, timberPages } from './timber-page.ts'

export interface CutsPage {
  readonly drawing: Drawing
  readonly label: string
}

/** A page for each panel, more where its tables are long; then the timber; numbered through. */
export const cutsPages = (window: Box, facts: PanelPagesFacts & TimberPagesFacts): readonly CutsPage[] => {
  const pages = [...panelPages(window, facts), ...timberPages(window, facts)]
  return pages.map(({ draw, label }, i) => ({ drawing: draw(`${i + 1} of ${pages.length}`), label }))
}
