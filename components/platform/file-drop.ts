import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** The whole window takes files: `over` while some hang above it, `take` when they are let go. */
export class FileDrop implements ReactiveController {
  over = false;

  constructor(host: ReactiveControllerHost, take: (files: readonly File[]) => void) {
    this.host = host;
    this.take = take;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly take: (files: readonly File[]) => void;
  private depth = 0;

  hostConnected(): void {
    addEventListener('dragenter', this.entered);
    addEventListener('dragover', this.moved);
    addEventListener('dragleave', this.left);
    addEventListener('drop', this.dropped);
  }

  hostDisconnected(): void {
    removeEventListener('dragenter', this.entered);
    removeEventListener('dragover', this.moved);
    removeEventListener('dragleave', this.left);
    removeEventListener('drop', this.dropped);
  }

  private show(over: boolean): void {
    if (!over) this.depth = 0;
    if (this.over === over) return;
    this.over = over;
    this.host.requestUpdate();
  }

  private readonly entered = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    this.depth += 1;
    this.show(true);
  };

  private readonly moved = (event: DragEvent): void => {
    if (holdsFiles(event)) event.preventDefault();
  };

  private readonly left = (): void => {
    this.depth -= 1;
    if (this.depth <= 0) this.show(false);
  };

  private readonly dropped = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    this.show(false);
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) this.take(files);
  };
}

const holdsFiles = (event: DragEvent): boolean => [...(event.dataTransfer?.types ?? [])].includes('Files');
