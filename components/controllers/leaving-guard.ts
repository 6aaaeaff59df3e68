import type { ReactiveController } from 'lit';

/** Has the browser ask before the page is left, but only while that would lose something. */
export class LeavingGuard implements ReactiveController {
  constructor(wouldLose: () => boolean) {
    this.wouldLose = wouldLose;
  }

  private readonly wouldLose: () => boolean;

  hostConnected(): void {
    addEventListener('beforeunload', this.leaving);
  }

  hostDisconnected(): void {
    removeEventListener('beforeunload', this.leaving);
  }

  private readonly leaving = (event: BeforeUnloadEvent): void => {
    if (this.wouldLose()) event.preventDefault();
  };
}
