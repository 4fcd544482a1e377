import { type Block, caution } from '../../block.ts'

/** Before a step that lifts sheet steel. */
export const steelCaution = (more: string, width: number): Block => ({
  ...caution(`Steel edges cut: gloves on, file them round${more}`, width),
  withNext: true,
})
