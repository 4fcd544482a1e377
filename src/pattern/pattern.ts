import type { Drawing } from '../drawing/drawing.ts'
import type { Path } from '../geometry/path.ts'
import type { Point } from '../geometry/point.ts'
import type { PatternLevel } from './heights.ts'

/** One edge of a pattern's cut line. `traced`: paper must carry it; the others are the panel's or a ruler's work. */
export interface PatternEdge {
  readonly path: Path
  readonly traced: boolean
}

/** A distance that a builder checks on the taped paper and again on the wood, mm. */
export interface PatternDistance {
  readonly words: string
  readonly value: number
  /** `chord` and `rise` tell how true the curve is */
  readonly of: 'chord' | 'rise' | 'panel'
  /** whether it can be measured again once the side is sawn */
  readonly onWood: boolean
}

/** What a straight edge is called, beside it. */
export interface EdgeName {
  readonly words: string
  readonly from: Point
  readonly to: Point
}

/** Words that stand whole on a page, on what they name or elsewhere along it. */
export interface PatternLabel {
  readonly of: 'timber' | 'plate' | 'piece'
  readonly words: string
  /** of a timber: what it is called where there is no room for how it lies */
  readonly shorter: string
  /** height of the capitals, mm */
  readonly size: number
  /** middles of the box, the usual one first */
  readonly places: readonly Point[]
  /** where a line may begin that leads to the box from beside, the usual place first */
  readonly dots: readonly Point[]
}

/** Where the screws of a timber go through the part. */
export interface TimberScrews {
  /** as it is called on paper: a stud under the curve, another timber behind the lip; numbered together */
  readonly called: 'stud' | 'timber'
  readonly timber: number
  /** of its face, radians */
  readonly angle: number
  readonly middles: readonly Point[]
  /** whether its face lies within the part: elsewhere the cut line is its face */
  readonly within: boolean
}

/** Full-size drawing of one part, in mm: toe at the left, y up. */
export interface Pattern {
  /** such as `outer/side` */
  readonly name: string
  readonly ramp: string
  readonly part: string
  /** every part that it serves, in the builder's words */
  readonly serves: readonly string[]
  /** the closed cut line, counter-clockwise: wood on the left of the way */
  readonly outline: Path
  /** what is sawn of it, in one piece: all but the edge that the panel has already */
  readonly cut: Path
  readonly edges: readonly PatternEdge[]
  /** what lies behind it, and heights of its edges: these lines break off round all that is read */
  readonly quiet: Drawing
  /** marks that lie on the part */
  readonly marks: Drawing
  /** straight edges that have a name; its place is tried on the right of their way first, where no wood is */
  readonly edgeNames: readonly EdgeName[]
  /** heights, each at its own level */
  readonly levels: readonly PatternLevel[]
  /** what its timbers are called */
  readonly labels: readonly PatternLabel[]
  /** a line in one piece that must be on paper to place and trace the traced edges */
  readonly line: Path
  /** strokes that a whole plot carries besides the outline */
  readonly markPaths: readonly Path[]
  /** of each timber, in the order of `markPaths` */
  readonly screws: readonly TimberScrews[]
  /** how many it is sawn in: more than one where no panel holds it whole */
  readonly pieces: number
  /** where these meet, from the toe: each joint from its top to the bottom edge */
  readonly joints: readonly (readonly [Point, Point])[]
  /** of the whole side */
  readonly length: number
  readonly height: number
  /** the notch by its corners, or by points along a round seat; empty where there is none */
  readonly notch: readonly Point[]
  /** named on the map */
  readonly points: readonly { readonly name: string; readonly at: Point }[]
  readonly distances: readonly PatternDistance[]
  /** what a builder asks of this part, short lines in his units */
  readonly facts: readonly string[]
}
