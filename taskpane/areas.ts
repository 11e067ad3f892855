import type { ComponentType } from 'react'

/** A part of the pane behind a tab. Its code is loaded when it is first opened. */
export interface AreaEntry {
  readonly id: string
  /** The word on the tab. */
  readonly name: string
  readonly load: () => Promise<ComponentType>
}

/** The pane's areas, in the order of their tabs. */
export const AREAS: readonly AreaEntry[] = [
  {
    id: 'set',
    name: 'Set',
    load: async () => (await import(/* webpackChunkName: "set" */ './set/SetArea')).SetArea,
  },
  {
    id: 'model',
    name: 'Model',
    load: async () => (await import(/* webpackChunkName: "model" */ './model/ModelArea')).ModelArea,
  },
  {
    id: 'mark',
    name: 'Mark',
    load: async () => (await import(/* webpackChunkName: "mark" */ './mark/MarkArea')).MarkArea,
  },
  {
    id: 'review',
    name: 'Review',
    load: async () => (await import(/* webpackChunkName: "review" */ './review/ReviewArea')).ReviewArea,
  },
]
