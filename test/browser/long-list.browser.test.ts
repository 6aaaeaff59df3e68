import { css, html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import { afterEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../components/app/adjoin-long-list.ts';
import type { AdjoinLongList } from '../../components/app/adjoin-long-list.ts';
import { bareRows } from '../../components/controllers/windowed-rows.ts';
import { faultsOfAccess, frames, mount, settled, until } from '../support/screen.ts';

/** A place that scrolls, with something above its list and below it, as the views have them. */
class TestPlace extends LitElement {
  static override styles = [bareRows, css`
    :host { display: block; height: 600px; overflow: auto; } table { table-layout: fixed; width: 100%; border-collapse: collapse; } td, th { text-align: start; height: 31px; padding: 0; }
    header, footer { height: 300px; } .thing { height: 90px; }
  `];
  static override properties = { count: { type: Number }, table: { type: Boolean } };
  declare count: number;
  declare table: boolean;

  override render(): TemplateResult {
    const ids = Array.from({ length: this.count }, (_, place) => `id-${place}`);
    const head = html`<caption>Things</caption><thead><tr aria-rowindex="1"><th scope="col">thing</th><th scope="col">number</th></tr></thead>`;
    const row = (place: number): TemplateResult => (this.table
      ? html`<tr data-place=${place} aria-rowindex=${place + 2}><th scope="row"><a href="#/thing-${place}">Thing ${place}</a></th><td>${place}</td></tr>`
      : html`<section class="thing" data-place=${place} aria-label=${`Thing ${place}`}><button type="button">Thing ${place}</button></section>`);
    return html`<header>above</header><adjoin-long-list .usual=${this.table ? 31 : 90} .ids=${ids} .head=${this.table ? head : undefined} .row=${row}></adjoin-long-list><footer>below</footer>`;
  }
}
customElements.define('test-place', TestPlace);

let place: TestPlace;
const list = (): AdjoinLongList => place.shadowRoot!.querySelector('adjoin-long-list')!;
const items = (): HTMLElement[] => [...place.shadowRoot!.querySelectorAll<HTMLElement>('[data-place]')];
const numberOf = (item: Element): number => Number((item as HTMLElement).dataset['place']);
const stops = (): HTMLElement[] => items().map((item) => item.querySelector<HTMLElement>('a, button')!);
const focused = (): number | undefined => items().filter((item) => item.matches(':focus-within')).map(numberOf)[0];

/** The item that is seen at a height of the place. */
function seenAt(px: number): number | undefined {
  const { top } = place.getBoundingClientRect();
  const item = items().find((one) => one.getBoundingClientRect().top <= top + px && one.getBoundingClientRect().bottom > top + px);
  return item === undefined ? undefined : numberOf(item);
}

async function show(count: number, table: boolean): Promise<void> {
  await page.viewport(1440, 900);
  place = await mount<TestPlace>('test-place', { count, table });
  await until('the items', () => items().length > 0);
  await settled(place);
}

afterEach(() => document.body.replaceChildren());

test('a short one is rendered whole', async () => {
  await show(60, true);
  expect(items().length).toBe(60);
  expect(place.shadowRoot!.querySelectorAll('[data-room]').length).toBe(0);
});

for (const table of [true, false]) {
  const [what, height, count] = table ? ['table', 31, 3000] as const : ['list', 90, 2000] as const;

  test(`of a long ${what} what is near is rendered, at its place, wherever one scrolls; what follows it lies below all of it`, async () => {
    await show(count, table);
    const before = place.shadowRoot!.querySelector(table ? 'tbody' : '.rows')!;
    for (const wanted of [1500, 40, 1990, 0]) {
      place.scrollTop = 300 + height * wanted;
      await until('the items there', () => { const seen = seenAt(300); return seen !== undefined && Math.abs(seen - wanted - 300 / height) < 8; });
      expect(items().length).toBeLessThan(160);
    }
    expect(Math.abs(before.getBoundingClientRect().height - count * height)).toBeLessThan(2);
    place.scrollTop = place.scrollHeight;
    await until('the last', () => items().some((item) => numberOf(item) === count - 1));
    const [last, footer] = [items().at(-1)!.getBoundingClientRect(), place.shadowRoot!.querySelector('footer')!.getBoundingClientRect()];
    expect(Math.abs(footer.top - last.bottom)).toBeLessThan(2);
    if (table) {
      expect(place.shadowRoot!.querySelector('table')!.getAttribute('aria-rowcount')).toBe(String(count + 1));
      expect(items().at(-1)!.getAttribute('aria-rowindex')).toBe(String(count + 1));
    }
    expect(await faultsOfAccess(place)).toEqual([]);
  });

  test(`in a long ${what} what has the focus keeps it, and Tab goes on from there`, async () => {
    await show(count, table);
    stops()[2]!.focus();
    await until('the focus', () => focused() === 2);
    place.scrollTop = 300 + height * 1000;
    await until('other items', () => (seenAt(300) ?? 0) > 900);
    expect(focused()).toBe(2);
    await userEvent.keyboard('{Tab}');
    await until('the focus on the next that there is', () => (focused() ?? 0) > 2);
    for (let step = 0; step < 30; step += 1) await userEvent.keyboard('{Tab}');
    await until('the focus further on', () => (focused() ?? 0) > 30);
  });

  test(`an item of a long ${what} is brought into sight by its id; all of it goes on paper`, async () => {
    await show(count, table);
    list().bring('id-1700');
    await until('it in sight', () => {
      const stop = stops().find((one) => one.textContent === 'Thing 1700')?.getBoundingClientRect();
      const frame = place.getBoundingClientRect();
      return stop !== undefined && stop.top >= frame.top - 1 && stop.bottom <= frame.bottom + 1;
    });
    dispatchEvent(new Event('beforeprint'));
    await until('all', () => items().length === count);
    dispatchEvent(new Event('afterprint'));
    await until('fewer again', () => items().length < 200);
    await frames(2);
  });
}
