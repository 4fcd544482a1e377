/** The usual cautions, on every map page. */
export const cautions: readonly string[] = [
  'Saws, routers and wood dust hurt: eyes, ears and lungs covered, work clamped, blade and cord watched, tools unplugged for changes.',
  'A ramp is heavy: two people lift it, more where the booklet says so; nobody stands under it. Heating or welding zinc-coated pipe gives off toxic fume.',
  'Riders wear helmet and pads, a child has an adult close by. Local codes and a licensed builder have the last word on height, guards and loads.',
]
