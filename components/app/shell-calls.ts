import type { LitElement } from 'lit';
import type { Command, DeskCall } from '../model/commands.ts';
import './adjoin-header.ts';
import './adjoin-palette.ts';
import { shellCommands } from './shell-commands.ts';
import type { ShellParts } from './shell-parts.ts';

/** Does what is commanded by keys, buttons, menus and the palette. */
export class ShellCalls {
  constructor(host: LitElement, shell: ShellParts) {
    this.host = host;
    this.shell = shell;
  }

  private readonly host: LitElement;
  private readonly shell: ShellParts;

  readonly run = ({ run }: Command): void => {
    switch (run.kind) {
      case 'action': this.shell.requests.ask({ action: run.action, preset: {} }); break;
      case 'place': this.shell.whereabouts.goToPlace(run.view); break;
      case 'desk': this.call(run.call); break;
    }
  };

  readonly call = (call: DeskCall): void => {
    const { desk, opening } = this.shell;
    const { renderRoot } = this.host;
    switch (call) {
      case 'open': void opening.pick(); break;
      case 'new': void opening.makeNew(); break;
      case 'save': void desk.save(); break;
      case 'save as': void desk.save(true); break;
      case 'undo': desk.undo(); break;
      case 'redo': desk.redo(); break;
      case 'close': void opening.close(); break;
      case 'palette': renderRoot.querySelector('adjoin-palette')?.show(shellCommands(desk.open)); break;
      case 'ink': renderRoot.querySelector('adjoin-header')?.changeScheme(); break;
      case 'help': void this.help(); break;
    }
  };

  /** Its words are many and rarely asked for, so they are loaded only then. */
  private async help(): Promise<void> {
    await import('./adjoin-help.ts');
    this.host.requestUpdate();
    await this.host.updateComplete;
    this.host.renderRoot.querySelector('adjoin-help')?.show();
  }
}
