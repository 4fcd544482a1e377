import type { Problem } from '../../index.ts'

interface MeantProps {
  readonly problem: Problem
  readonly mend: (of: Problem) => void
}

/** What a message asks whether it was meant, as a button that types it. */
export const Meant = ({ problem, mend }: MeantProps) =>
  problem.meant === undefined ? null : (
    <button type="button" class="offer" onClick={() => mend(problem)}>
      type {problem.code === 'units' ? `units: ${problem.meant}` : problem.meant}
    </button>
  )
