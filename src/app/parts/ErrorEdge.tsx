import { Component, type ReactNode } from 'react';
import { frameText as text } from '../text/frame.ts';

interface Props {
  readonly words: string;
  readonly children: ReactNode;
}

/** The one place where our own mistakes end: a plain sentence, and what can still be done. React asks for a class here. */
export class ErrorEdge extends Component<Props, { readonly fault: string | null }> {
  override state: { readonly fault: string | null } = { fault: null };

  static getDerivedStateFromError(fault: unknown): { readonly fault: string } {
    return { fault: fault instanceof Error ? fault.message : String(fault) };
  }

  override render(): ReactNode {
    if (this.state.fault === null) return this.props.children;
    return (
      <div className="notice blocking edge" role="alert">
        <p>{this.props.words}</p>
        <p className="small soft">{text.ourFault(this.state.fault)}</p>
        <button type="button" onClick={() => this.setState({ fault: null })}>
          {text.tryAgain}
        </button>
      </div>
    );
  }
}
