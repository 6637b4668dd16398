import { Component, type ReactNode } from 'react'
import styles from './notices.module.css'

interface ErrorBoundaryProps {
  /** What is inside, as it begins a sentence. */
  readonly what: string
  readonly children: ReactNode
}

/** Keeps a mistake in one part of the screen from taking the others with it, and gives a way on. */
export class ErrorBoundary extends Component<ErrorBoundaryProps, { readonly failed: boolean }> {
  override state = { failed: false }

  static getDerivedStateFromError() {
    return { failed: true }
  }

  override render() {
    if (!this.state.failed) return this.props.children
    return (
      <div role="alert" className={styles.failed}>
        <p>
          {this.props.what} could not be drawn. The take and the chain are still here. Show it again; if that
          does not help, undo the last change.
        </p>
        <button type="button" onClick={() => this.setState({ failed: false })}>
          Show it again
        </button>
      </div>
    )
  }
}
