/** What a pipe asks for besides, behind the second. */
const pipeFumes = ' Heating or welding zinc-coated pipe gives off toxic fume.'

/** The usual cautions, on every map page and with the offsets; `pipe`: the ramp has one. */
export const cautionsOf = (pipe: boolean): readonly string[] => [
  'Saws, routers and wood dust hurt: eyes, ears and lungs covered, work clamped, blade and cord watched, tools unplugged for changes.',
  `A ramp is heavy: two people lift it, more where the booklet says so; nobody stands under it.${pipe ? pipeFumes : ''}`,
  'Riders wear helmet and pads, a child has an adult close by. Local codes and a licensed builder have the last word on height, guards and loads.',
]
