/** A mistake of our own in one room leaves the others, and the job, as they are. */
import { Component, type ReactNode } from "react";

interface Props {
  readonly children: ReactNode;
}

interface State {
  readonly detail: string | null;
}

export class RoomBoundary extends Component<Props, State> {
  override state: State = { detail: null };

  static getDerivedStateFromError(error: unknown): State {
    return { detail: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.detail === null) return this.props.children;
    return (
      <div className="trouble" role="alert">
        <p>
          <strong>This room could not be shown.</strong> It is a mistake in the program, not in your job,
          which is kept as it was. Undo the last change, or save the job to a file in Jobs and send it with
          these words: “{this.state.detail}”.
        </p>
        <button type="button" className="button" onClick={() => this.setState({ detail: null })}>
          Try again
        </button>
      </div>
    );
  }
}
