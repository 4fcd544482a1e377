import type { Units } from '../length.ts'

/** A checked design: every length in mm, every default filled in, every `like` and `stores-inside` resolved. */
export interface Design {
  readonly title: string
  readonly units: Units
  readonly paper: PaperName
  readonly stock: Stock
  /** what things cost, where the design says */
  readonly prices?: Prices
  /** where the ramps are kept, where the design says */
  readonly space?: Space
  readonly ramps: readonly RampDesign[]
}

export type { Units }

export const paperNames = ['letter', 'legal', 'tabloid', 'a4', 'a3', 'a2', 'a1', 'a0'] as const
export type PaperName = (typeof paperNames)[number]

export interface Stock {
  /** short and long side of a panel */
  readonly panel: readonly [number, number]
  readonly timber: readonly number[]
  readonly pipe: readonly number[]
  readonly kerf: number
  /** what is not used along each edge of a panel */
  readonly trim: number
  /** by material and thickness; a sheet that is not among them is bought in its usual size */
  readonly panels: readonly StockPanel[]
  /** what is there already */
  readonly offcuts: readonly Offcut[]
}

export interface StockPanel {
  readonly sheet: Sheet
  /** short and long side; the grain runs along the long one */
  readonly size: readonly [number, number]
  /** so many are clamped and sawn as one */
  readonly clamped: number
  /** whether its better face must show on both outer sides */
  readonly goodFace: 'any' | 'out'
}

export interface Offcut {
  readonly sheet: Sheet
  readonly size: readonly [number, number]
  readonly count: number
}

/** What a price is for: a sheet by thickness and material, of any size or of one, a timber by section and length, else a word of the list. */
export type Priced =
  | {
      readonly kind: 'sheet'
      readonly sheet: Sheet
      /** of one panel, short side first, mm; null: whichever */
      readonly size: readonly [number, number] | null
    }
  | { readonly kind: 'timber'; readonly section: readonly [number, number]; readonly length: number }
  | { readonly kind: 'word'; readonly word: PricedWord }

/** Things of the shopping list that a price may name by a word. */
export const pricedWords = [
  'pipe',
  'screws',
  'wheels',
  'handles',
  'glue',
  'paint',
  'bolts',
  'rubber',
] as const
export type PricedWord = (typeof pricedWords)[number]

/** Of one sheet, one length of timber or pipe, one box, one piece. */
export interface Price {
  /** as it was typed */
  readonly what: string
  readonly of: Priced
  readonly amount: number
}

/** All in one currency, its sign where it was typed: before the figure or behind it, with its space. */
export interface Prices {
  readonly before: string
  readonly behind: string
  readonly all: readonly Price[]
}

/** Width before depth of the garage, width before height of its door. */
export interface Space {
  readonly garage: readonly [number, number]
  readonly door: readonly [number, number] | null
  readonly ceiling: number | null
}

export const materials = ['plywood', 'hardboard', 'steel', 'other'] as const
export type Material = (typeof materials)[number]

export interface Sheet {
  readonly thickness: number
  readonly material: Material
}

export type HeightLayer = 'frame' | 'deck' | 'surface'
export type CurveLayer = 'frame' | 'surface'

export const kinds = ['quarter', 'flat'] as const
export type RampKind = (typeof kinds)[number]

/** What every kind of ramp has. */
interface FramedDesign {
  readonly name: string
  /** the ramp whose keys hold where this one says none; null for none */
  readonly like: string | null
  readonly width: number
  readonly sides: { readonly thickness: number; readonly count: number }
  /** from the studs outward */
  readonly skin: readonly Sheet[]
  /** where the top sheet's screws go: into the studs, or between them into the sheets below */
  readonly fasten: 'studs' | 'between'
  // what a kind can have none of it leaves out; where it can, null says that it has none
  readonly runOut?: RunOut
  readonly deckBoard?: Sheet | null
  readonly coping?: Coping | null
  readonly wheels?: Wheels | null
  readonly storesInside?: StoresInside | null
}

/** The ramp that one is stored in, and the total clearance of both sides. */
export interface StoresInside {
  readonly ramp: string
  readonly clearance: number
}

/** What closes the step between the ridden face and the floor. */
export type RunOut =
  | { readonly kind: 'sheet'; readonly sheet: Sheet }
  /** each layer of skin starts so far behind the one below */
  | { readonly kind: 'stepped'; readonly back: number }
  | { readonly kind: 'none' | 'flat' }

/** A circle, and how high it runs level. */
export interface CircleDesign {
  readonly circle: { readonly layer: CurveLayer; readonly radius: number }
  readonly tangent: { readonly layer: CurveLayer; readonly height: number }
}

/** The keys that name a curve in the file. */
export const curveNames = ['circle'] as const
export type CurveName = (typeof curveNames)[number]

export interface CurveDesigns {
  readonly circle: CircleDesign
}

/** One for each curve: told apart by the key that names it, as in the file. */
export type CurveDesign = CurveDesigns[CurveName]

export interface QuarterDesign extends FramedDesign {
  readonly kind: 'quarter'
  readonly height: { readonly layer: HeightLayer; readonly value: number }
  readonly transition: CurveDesign
  readonly toe: number
  /** lip to back edge, or the whole side */
  readonly back: { readonly from: 'deck' | 'length'; readonly value: number }
  readonly studs: {
    readonly section: readonly [number, number]
    readonly every: number
    /** closer ones up to a length along the curve; null for none */
    readonly foot: { readonly every: number; readonly to: number } | null
    /** under the deck board */
    readonly deck: number
  }
  readonly runOut: RunOut
  readonly deckBoard: Sheet | null
  readonly coping: Coping | null
  /** leg of the 45° cut at the back bottom corner; 0 for none */
  readonly chamfer: number
  /** on the cut: wheels that carry the ramp when it is tipped */
  readonly wheels: Wheels | null
  readonly storesInside: StoresInside | null
}

export interface FlatDesign extends FramedDesign {
  readonly kind: 'flat'
  readonly length: number
  readonly height: { readonly layer: CurveLayer; readonly value: number }
  readonly studs: { readonly section: readonly [number, number]; readonly every: number }
}

export type RampDesign = QuarterDesign | FlatDesign

/** Rigid wheels, each with its plate. */
export interface Wheels {
  readonly diameter: number
  /** from the plate's face to the tread */
  readonly height: number
  readonly count: number
}

export interface Coping {
  readonly outside: number
  readonly material: 'steel' | 'plastic'
  /** from either end, and from one to the next */
  readonly holes: { readonly ends: number; readonly every: number }
  readonly seat: 'square' | 'round'
  readonly by:
    | { readonly kind: 'reveals'; readonly up: number; readonly out: number }
    | { readonly kind: 'notch'; readonly along: number; readonly down: number }
}
