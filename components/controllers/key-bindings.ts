import type { ReactiveController } from 'lit';
import { innermost } from '../model/commands.ts';
import type { Command, DeskCall } from '../model/commands.ts';
import { isTyping, keysOf } from '../model/keys.ts';

const deskKeys: Readonly<Record<string, DeskCall>> = {
  'Mod+O': 'open', 'Mod+S': 'save', 'Mod+Shift+S': 'save as', 'Mod+Z': 'undo', 'Mod+Shift+Z': 'redo', 'Mod+Y': 'redo', 'Mod+K': 'palette', F1: 'help',
};

/** What keys lead to. */
export interface KeyTargets {
  readonly call: (call: DeskCall) => void;
  /** Edits that there are keys for, as they can be done now. */
  readonly edits: () => readonly Command[];
  readonly run: (command: Command) => void;
}

/** The keys of the whole page: what the shell does, also while one types, and edits of what is selected, while one does not. */
export class KeyBindings implements ReactiveController {
  constructor(targets: KeyTargets) {
    this.targets = targets;
  }

  private readonly targets: KeyTargets;
  /** The field that was typed into last. */
  private typedInto: EventTarget | undefined;

  hostConnected(): void {
    addEventListener('keydown', this.pressed);
    addEventListener('input', this.typed);
  }

  hostDisconnected(): void {
    removeEventListener('keydown', this.pressed);
    removeEventListener('input', this.typed);
  }

  private readonly typed = (event: Event): void => {
    this.typedInto = isTyping(event) ? event.composedPath()[0] : undefined;
  };

  private readonly pressed = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    const keys = keysOf(event);
    const call = deskKeys[keys];
    if (keys === 'Enter') this.typedInto = undefined;
    if (call !== undefined && !this.takesBackTyping(event, call)) {
      event.preventDefault();
      this.targets.call(call);
      return;
    }
    // What is selected lies below an open dialog, out of sight.
    if (isTyping(event) || event.composedPath().some((one) => one instanceof HTMLDialogElement)) return;
    const command = innermost(this.targets.edits().filter((one) => one.keys === keys));
    if (command === undefined) return;
    event.preventDefault();
    this.targets.run(command);
  };

  /** A field that was typed into takes back its own typing; one that was merely gone to has nothing to take back. */
  private takesBackTyping(event: Event, call: DeskCall): boolean {
    return (call === 'undo' || call === 'redo') && this.typedInto !== undefined && event.composedPath()[0] === this.typedInto;
  }
}
