import type { Design } from '../design/design.ts'
import type { Check } from './check.ts'
import type { Ramp, SolvedDesign } from './ramp.ts'

const degrees = (radians: number): number => (radians * 180) / Math.PI

/** The figures of a design as scripts read them: design.md §6; mm and degrees. What could not be solved is null. */
export interface Figures {
  readonly title: string
  readonly units: string
  readonly ramps: readonly ReturnType<typeof rampFigures>[]
  readonly checks: readonly Check[]
}

export const designFigures = (design: Design, solved: SolvedDesign): Figures => ({
  title: design.title,
  units: design.units,
  ramps: solved.ramps.map(rampFigures),
  checks: solved.checks,
})

const rampFigures = (ramp: Ramp) => {
  const { transition, coping } = ramp
  return {
    name: ramp.name,
    kind: ramp.kind,
    length: ramp.length,
    deck: ramp.deck,
    width: ramp.width,
    heights: transition?.heights ?? null,
    transition: transition && {
      curve: transition.kind,
      radius: transition.radius,
      centre: [transition.centre.x, transition.centre.y],
      toeAngle: degrees(transition.toeAngle),
      lipAngle: degrees(transition.lipAngle),
      arc: transition.arc,
      run: transition.run,
      toeStep: transition.toeStep,
      bridge: transition.bridge,
    },
    coping: coping && {
      outside: coping.outside,
      centre: [coping.centre.x, coping.centre.y],
      up: coping.up,
      out: coping.out,
      notch: { seat: coping.seat, along: coping.along, down: coping.down },
    },
    studs: ramp.studs.map((stud) => ({
      at: stud.at,
      x: stud.x,
      y: stud.y,
      angle: degrees(stud.angle),
      lies: stud.lies,
      role: stud.role,
      width: stud.width,
      depth: stud.depth,
    })),
    deckTimbers: ramp.deckTimbers.map((timber) => ({
      x: timber.x,
      y: timber.y,
      lies: timber.lies,
      role: timber.role,
      width: timber.width,
      depth: timber.depth,
    })),
    studLength: ramp.studLength,
    skin: ramp.skin.map((layer) => ({
      layer: layer.layer,
      sheet: layer.sheet.material,
      thickness: layer.sheet.thickness,
      length: layer.length,
      marks: layer.marks,
    })),
  }
}
