import { afterEach, beforeEach, expect } from 'vitest';
import '../../components/app/adjoin-workbench.ts';
import type { AdjoinWorkbench } from '../../components/app/adjoin-workbench.ts';
import type { Desk } from '../../components/controllers/desk.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { deep, faultsOfAccess, frames, mount, setScheme, until } from './screen.ts';
import { smallCabin } from './small-cabin.ts';

/** The whole workbench with its workers, for tests that do what a user does. Call `eachWithWorkbench()` once in a file. */
let mounted: AdjoinWorkbench;

/** Before every test a workbench with nothing open and nothing remembered in this tab, and an empty page after it. */
export function eachWithWorkbench(): void {
  beforeEach(async () => {
    sessionStorage.clear();
    history.replaceState(null, '', '#/');
    mounted = await mount<AdjoinWorkbench>('adjoin-workbench', {});
  });
  afterEach(() => {
    document.body.replaceChildren();
    history.replaceState(null, '', '#/');
    setScheme('light');
  });
}

export const workbench = (): AdjoinWorkbench => mounted;
export const desk = (): Desk => (mounted as unknown as { readonly desk: Desk }).desk;

/** All elements that fit a selector, and the first of them, wherever they are in the workbench. */
export const all = <E extends Element = HTMLElement>(selector: string): E[] => deep<E>(mounted.shadowRoot as ShadowRoot, selector);
export const one = <E extends Element = HTMLElement>(selector: string): E | undefined => all<E>(selector)[0];

/** Text without the white space of the template. */
export const wordsOf = (element: Node | null | undefined): string => element?.textContent?.replace(/\s+/g, ' ').trim() ?? '';

/** Lets files fall on the page. */
export function drop(...files: readonly File[]): void {
  const transfer = new DataTransfer();
  for (const file of files) transfer.items.add(file);
  for (const kind of ['dragenter', 'dragover', 'drop']) dispatchEvent(new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true }));
}

export const cabinFile = (cabin: Cabin): File => new File([serialiseCabin(cabin)], 'small.cabin.json');

/** An address that the workbench opens the cabin from. */
export const addressOf = (cabin: Cabin): string => encodeURIComponent(URL.createObjectURL(cabinFile(cabin)));

/** Opens a cabin by drop and waits until it is shown. */
export async function openByDrop(cabin: Cabin = smallCabin({ ruleBook: 'ciede2000' })): Promise<void> {
  drop(cabinFile(cabin));
  await until('the address of the cabin', () => location.hash.startsWith('#/cabin'));
  await until('the cabin', () => one('adjoin-cabin-view'));
}

/** Nothing that axe faults, in light and in dark. */
export async function expectAccessible(): Promise<void> {
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(mounted)).toEqual([]);
  }
}
