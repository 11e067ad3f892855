import { Component, type ReactNode } from 'react'
import { Notice } from './Notice'

interface Props {
  readonly name: string
  readonly children: ReactNode
}

/** Says so where an area fails or its code cannot be loaded; the rest of the pane goes on. */
export class LoadGuard extends Component<Props, { readonly failed: boolean }> {
  override state = { failed: false }

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true }
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children
    const sentence = `The area ${this.props.name} could not be opened.`
    const next = 'Check that the computer is online, then close the pane and open it again from the Home tab.'
    return <Notice said={{ kind: 'problem', sentence, next }} />
  }
}
