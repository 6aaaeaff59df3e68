import '../../components/app/adjoin-workbench.ts';
import type { AdjoinWorkbench } from '../../components/app/adjoin-workbench.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { deep, mount, setScheme, until } from './screen.ts';

/** The workbench with a cabin open, as after a file was dropped on it. */
export class OpenedWorkbench {
  readonly element: AdjoinWorkbench;

  private constructor(element: AdjoinWorkbench) {
    this.element = element;
  }

  static async with(cabin: Cabin): Promise<OpenedWorkbench> {
    sessionStorage.clear();
    history.replaceState(null, '', '#/');
    const opened = new OpenedWorkbench(await mount<AdjoinWorkbench>('adjoin-workbench', {}));
    opened.drop(new File([serialiseCabin(cabin)], 'test.cabin.json'));
    await until('the address of the cabin', () => location.hash.startsWith('#/cabin'));
    return opened;
  }

  all<E extends Element = HTMLElement>(selector: string): E[] {
    return deep<E>(this.element.shadowRoot as ShadowRoot, selector);
  }

  one<E extends Element = HTMLElement>(selector: string): E | undefined {
    return this.all<E>(selector)[0];
  }

  drop(file: File): void {
    const transfer = new DataTransfer();
    transfer.items.add(file);
    for (const kind of ['dragenter', 'dragover', 'drop']) dispatchEvent(new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true }));
  }

  close(): void {
    document.body.replaceChildren();
    history.replaceState(null, '', '#/');
    setScheme('light');
  }
}

/** Text without the white space of the template. */
export const words = (element: Node | null | undefined): string => element?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
