import { html, render } from 'lit';
import { beforeEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { typedValue } from '../../components/controllers/typed-value.ts';

/** A field as an editor draws it: anew whenever anything is other, and its value taken when it is left. */
const frame = document.createElement('div');
let taken: string[] = [];
const draw = (value: string, of?: string): unknown => render(html`<input .value=${typedValue(value, of)} @change=${(event: Event) => taken.push((event.target as HTMLInputElement).value)} /><button>beside</button>`, frame);
const field = (): HTMLInputElement => frame.querySelector('input')!;

beforeEach(() => {
  taken = [];
  document.body.replaceChildren(frame);
  render(html``, frame);
});

test('what is being typed stays while all is drawn anew, and is taken when the field is left', async () => {
  draw('0.8');
  await userEvent.clear(field());
  draw('0.8');
  await userEvent.type(field(), '1.2');
  draw('0.8');
  expect(field().value).toBe('1.2');
  await userEvent.tab();
  expect(taken).toEqual(['1.2']);
  draw('1.2');
  expect(field().value).toBe('1.2');
});

test('what was not taken gives way once the field is left, and a value that becomes another one is shown', async () => {
  draw('0.8');
  await userEvent.fill(field(), 'nonsense');
  await userEvent.tab();
  draw('0.8');
  expect(field().value).toBe('0.8');
  field().focus();
  draw('0.9');
  expect(field().value).toBe('0.9');
});

test('what was typed for one thing is not left for another, and a value changed elsewhere wins', async () => {
  draw('', 'first');
  await userEvent.fill(field(), 'meant for the first');
  draw('', 'second');
  expect(field().value).toBe('');
  await userEvent.fill(field(), 'half');
  draw('undone', 'second');
  expect(field().value).toBe('undone');
});
