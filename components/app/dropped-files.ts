import type { LitElement } from 'lit';
import { droppedCabin } from '../platform/dropped-cabin.ts';
import { FileDrop } from '../platform/file-drop.ts';
import type { ViewElement } from '../views/view-element.ts';
import type { ShellParts } from './shell-parts.ts';

/** Files that are let go above the page, and what takes them: the place one is in where it has a use for them, else a cabin is opened or readings are imported. */
export class DroppedFiles {
  constructor(host: LitElement, shell: ShellParts) {
    this.host = host;
    this.shell = shell;
    this.drop = new FileDrop(host, (files) => void this.take(files));
  }

  private readonly host: LitElement;
  private readonly shell: ShellParts;
  private readonly drop: FileDrop;

  /** Some hang above the page. */
  get over(): boolean {
    return this.drop.over;
  }

  private async take(files: readonly File[]): Promise<void> {
    const { desk, whereabouts, opening } = this.shell;
    const here = desk.open === undefined ? undefined : whereabouts.route.view;
    const [file] = files;
    const single = files.length === 1 ? file : undefined;
    // Another cabin is just what is compared with.
    if (here === 'compare' && single !== undefined) return hand(await this.shell.views.load(here), files);
    const cabin = await droppedCabin(files);
    if (cabin !== undefined) return opening.take({ file: cabin, handle: undefined });
    if (desk.open !== undefined) return this.takeInto(files, single);
    if (single !== undefined) return opening.take({ file: single, handle: undefined });
    desk.refuse({
      file: `${files.length} files`,
      issues: [{
        code: 'several-files', severity: 'error', found: files.map((one) => one.name).join(', '), expected: 'one cabin file',
        hint: 'Open a cabin, or make a new one, then drop files of readings on it.',
      }],
    });
  }

  /** Files that are no cabin, for the one that is open: a rule book where rules are looked at, surfaces, readings. */
  private async takeInto(files: readonly File[], single: File | undefined): Promise<void> {
    const { whereabouts, views } = this.shell;
    if (whereabouts.route.view === 'rules' && /\.json$/i.test(single?.name ?? '')) return hand(await views.load('rules'), files);
    const target = /\.(sdf|x3p|png)$/i.test(single?.name ?? '') ? 'surfaces' : 'import';
    if (whereabouts.route.view !== target) whereabouts.goToPlace(target);
    const view = await views.load(target);
    // It has its route before it has its files.
    await this.host.updateComplete;
    hand(view, files);
  }
}

function hand(view: ViewElement | undefined, files: readonly File[]): void {
  view?.dispatchEvent(new CustomEvent('adjoin-files', { detail: files }));
}
