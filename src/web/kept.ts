import { type Component, type ComponentType, createElement, type VNode } from 'preact'

const differ = (one: object, other: object): boolean => {
  const [a, b] = [one as Readonly<Record<string, unknown>>, other as Readonly<Record<string, unknown>>]
  for (const key in a) if (!(key in b)) return true
  for (const key in b) if (a[key] !== b[key]) return true
  return false
}

/** A part of the page that is drawn anew only when something that it is given has changed. */
export const kept = <P extends object>(Part: ComponentType<P>): ((props: P) => VNode) =>
  function (this: unknown, props: P) {
    const own = this as Component<P>
    own.shouldComponentUpdate = (next) => differ(own.props, next)
    return createElement(Part, props)
  } as (props: P) => VNode
