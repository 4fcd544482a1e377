import type { Affine } from '../geometry/affine.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'

/** Layers, in the order in which they are drawn. Lines to be sawn are in `cut` and nothing else is. */
export const layers = ['note', 'joint', 'datum', 'mark', 'cut'] as const
export type Layer = (typeof layers)[number]

/** Widths and dashes in mm on paper, whatever the map; grey 0 is black, 1 is white. */
export interface Pen {
  readonly width: number
  readonly dash?: readonly number[]
  readonly grey?: number
}

export type Face = 'regular' | 'bold'

export type Mark =
  | { readonly kind: 'stroke'; readonly layer: Layer; readonly path: Path; readonly pen: Pen }
  | { readonly kind: 'fill'; readonly layer: Layer; readonly path: Path; readonly grey: number }
  | {
      readonly kind: 'text'
      readonly layer: Layer
      /** left, middle or right end of the baseline, as `align` says */
      readonly at: Point
      /** direction of the baseline, radians */
      readonly angle: number
      /** height of a capital letter, mm */
      readonly size: number
      readonly face: Face
      readonly align: 'left' | 'middle' | 'right'
      readonly text: string
      readonly grey?: number
    }
  /** marks in a frame of their own; `map` takes them to the frame around */
  | { readonly kind: 'group'; readonly map: Affine; readonly marks: readonly Mark[]; readonly shared?: never }
  | SharedGroup

/** A line or an area: what is drawn without a font. */
export type Shape = Extract<Mark, { kind: 'stroke' | 'fill' }>

/** A group whose very list of marks stands in many places: a file may hold it once. */
export interface SharedGroup {
  readonly kind: 'group'
  readonly map: Affine
  readonly marks: readonly Shape[]
  /** the layer of all of them */
  readonly shared: Layer
}

/** Plain strokes, fills and words. Later ones lie over earlier ones of the same layer. */
export type Drawing = readonly Mark[]

export const stroke = (layer: Layer, path: Path, pen: Pen): Shape => ({ kind: 'stroke', layer, path, pen })

export const fill = (layer: Layer, path: Path, grey: number): Shape => ({ kind: 'fill', layer, path, grey })

export const group = (map: Affine, marks: Drawing): Mark => ({ kind: 'group', map, marks })

/** What is drawn again and again: `marks` is one list, made once, whose every member lies in `layer`. */
export const shared = (map: Affine, layer: Layer, marks: readonly Shape[]): SharedGroup => ({
  kind: 'group',
  map,
  marks,
  shared: layer,
})

export interface TextOptions {
  readonly angle?: number
  readonly face?: Face
  readonly align?: 'left' | 'middle' | 'right'
  readonly grey?: number
}

export const text = (
  layer: Layer,
  at: Point,
  size: number,
  words: string,
  options: TextOptions = {},
): Extract<Mark, { kind: 'text' }> => {
  const { angle = 0, face = 'regular', align = 'left', grey } = options
  return grey === undefined
    ? { kind: 'text', layer, at, size, text: words, angle, face, align }
    : { kind: 'text', layer, at, size, text: words, angle, face, align, grey }
}
