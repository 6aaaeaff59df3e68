import type { LitElement, ReactiveController } from 'lit';
import type { Selection } from '../../src/actions/index.ts';
import type { Desk } from '../controllers/desk.ts';
import { editEvent, formEvent, menuEvent, selectEvent } from '../controllers/edit-events.ts';
import type { WantedEdit, WantedForm, WantedMenu } from '../controllers/edit-events.ts';
import './adjoin-action-form.ts';
import './adjoin-context-menu.ts';

const takesAway = /\.(?:remove|withdraw)$/;

/** What elements under the shell ask of it by events: edits, forms of edits, a selection, a menu of what can be done with it. */
export class EditRequests implements ReactiveController {
  /** What was taken away last, in words, until the next edit. */
  removed: string | undefined;
  /** What the menu was asked for last. */
  menuFor: Selection | undefined;

  constructor(host: LitElement, desk: Desk, say: (text: string) => void) {
    this.host = host;
    this.desk = desk;
    this.say = say;
    host.addController(this);
  }

  private readonly host: LitElement;
  private readonly desk: Desk;
  private readonly say: (text: string) => void;

  hostConnected(): void {
    for (const [name, listen] of this.listeners) this.host.addEventListener(name, listen);
  }

  hostDisconnected(): void {
    for (const [name, listen] of this.listeners) this.host.removeEventListener(name, listen);
  }

  /** Opens the form of an action for what is selected; where nothing is left to ask, the action is done at once. */
  ask(wanted: WantedForm): void {
    this.host.renderRoot.querySelector('adjoin-action-form')?.ask(wanted, this.desk.open?.selection ?? {});
  }

  /** What was taken away is seen; it is not spoken of any longer. */
  forgetRemoved(): void {
    this.noteRemoved(undefined);
  }

  private noteRemoved(label: string | undefined): void {
    if (this.removed === label) return;
    this.removed = label;
    this.host.requestUpdate();
  }

  private edit(wanted: WantedEdit): void {
    const result = this.desk.do(wanted.action, wanted.values, wanted.options);
    wanted.result = result;
    this.noteRemoved(result.done && takesAway.test(wanted.action) ? result.label : undefined);
    const [fault] = result.done ? [] : result.issues;
    if (fault !== undefined) this.say(`Not done: ${fault.hint ?? `expected ${fault.expected ?? fault.code}`}`);
  }

  private form(wanted: WantedForm): void {
    if (this.desk.open?.locked === true) this.say('Not done: the cabin is open in another tab. Take it over to change it here.');
    else this.ask(wanted);
  }

  private menu({ x, y, selection }: WantedMenu): void {
    this.desk.select(selection);
    this.menuFor = selection;
    this.host.requestUpdate();
    void this.host.updateComplete.then(() => this.host.renderRoot.querySelector('adjoin-context-menu')?.show(x, y));
  }

  private readonly listeners: readonly (readonly [string, EventListener])[] = [
    [editEvent, (event) => this.edit((event as CustomEvent<WantedEdit>).detail)],
    [formEvent, (event) => this.form((event as CustomEvent<WantedForm>).detail)],
    [menuEvent, (event) => this.menu((event as CustomEvent<WantedMenu>).detail)],
    [selectEvent, (event) => this.desk.select((event as CustomEvent<Selection>).detail)],
  ];
}
