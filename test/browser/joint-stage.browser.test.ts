import { userEvent } from 'vitest/browser';
import { beforeEach, describe, expect, test } from 'vitest';
import type { AdjoinLamp } from '../../components/figures/surface/adjoin-lamp.ts';
import type { AdjoinSurfaceStrip } from '../../components/figures/surface/adjoin-surface-strip.ts';
import { usualLamp } from '../../components/figures/surface/lamp.ts';
import { findLight } from '../../components/model/light-groups.ts';
import '../../components/views/joint/adjoin-joint-stage.ts';
import type { AdjoinJointStage, StageSide } from '../../components/views/joint/adjoin-joint-stage.ts';
import type { Joint } from '../../src/cabin/cabin.ts';
import type { PartAppearance } from '../../src/harmony/judgement.ts';
import { faultsOfAccess, mount, until } from '../support/screen.ts';

const joint: Joint = { id: 'j', parts: ['a', 'b'], kind: 'gap', gapMm: 1.2, viewMm: 700 };
const appearance = (level: number, more: Partial<PartAppearance>): PartAppearance => ({
  part: 'a', source: 's', specimen: 'p', colourSpots: 5, gloss: [], spectrum: { startNm: 400, stepNm: 10, values: Array.from({ length: 31 }, () => level) }, ...more,
});
const gloss: PartAppearance['gloss'] = [{ angle: 60, mean: 2.1, sd: 0.1, spots: 5 }];
const hide: StageSide = { part: 'a', name: 'Armrest', about: 'leather', material: 'leather', appearance: appearance(0.05, { gloss, texture: { saUm: 7.8, salMm: 0.53, str: 0.7 } }) };
const cloth: StageSide = { part: 'b', name: 'Insert', about: 'textile', material: 'textile', appearance: appearance(0.06, {}) };

let stage: AdjoinJointStage;
const strip = (): AdjoinSurfaceStrip => stage.renderRoot.querySelector('adjoin-surface-strip')!;
const lamp = (): AdjoinLamp => stage.renderRoot.querySelector('adjoin-lamp')!;
const notes = (): string => stage.renderRoot.querySelector('.notes')?.textContent ?? '';
const button = (name: string): HTMLButtonElement => [...stage.renderRoot.querySelectorAll('button')].find((one) => one.textContent?.trim() === name)!;

beforeEach(async () => {
  stage = await mount<AdjoinJointStage>('adjoin-joint-stage', { joint, sides: [hide, cloth], light: findLight('D65')!, observer: 10, gamut: 'srgb' });
});

test('the picture is called what it is', () => {
  expect(notes()).toContain('Simulation from Sa, Sal, Str and gloss; not a photograph.');
  expect(notes()).toContain('No texture reading of Insert: drawn plain.');
  expect(notes()).toContain('No gloss reading of Insert: drawn matt.');
  expect(strip().renderRoot.querySelector('svg')?.getAttribute('aria-label')).toBe('Armrest above, Insert below, under D65; simulated grain and gloss');
});

test('sides without readings are not called a simulation', async () => {
  stage.sides = [{ ...cloth, name: 'Pad' }, cloth];
  await stage.updateComplete;
  expect(notes()).toContain('Drawn plain and matt: there are no readings of texture or gloss.');
  expect(notes()).not.toContain('Simulation');
});

describe('the lamp', () => {
  test('is moved by pulling the picture, tilt by pulling with Shift', async () => {
    const figure = stage.renderRoot.querySelector<HTMLElement>('.figure')!;
    figure.setPointerCapture = () => {};
    const pointer = (type: string, x: number, y: number, shiftKey = false): boolean =>
      figure.dispatchEvent(new PointerEvent(type, { pointerId: 5, button: 0, clientX: x, clientY: y, shiftKey, bubbles: true }));
    pointer('pointerdown', 100, 100);
    pointer('pointermove', 180, 100);
    expect(stage.lamp.fromDeg).toBeGreaterThan(15);
    expect(stage.moving).toBe(true);
    pointer('pointermove', 180, 60, true);
    expect(stage.lamp.tiltDeg).toBe(10);
    pointer('pointerup', 180, 60);
    expect(stage.moving).toBe(false);
    await stage.updateComplete;
    expect(strip().lamp).toEqual(stage.lamp);
    pointer('pointermove', 300, 300);
    expect(stage.lamp.tiltDeg).toBe(10);
  });

  test('and by the keys of its sliders, which say in words where it is', async () => {
    const [from, height, tilt] = [...lamp().renderRoot.querySelectorAll<HTMLInputElement>('input')] as [HTMLInputElement, HTMLInputElement, HTMLInputElement];
    from.focus();
    await userEvent.keyboard('{ArrowRight>9/}');
    expect(stage.lamp.fromDeg).toBe(45);
    await lamp().updateComplete;
    expect(from.getAttribute('aria-valuetext')).toBe('from above right');
    height.focus();
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
    expect(stage.lamp.elevationDeg).toBe(43);
    tilt.focus();
    await userEvent.keyboard('{ArrowRight}');
    await lamp().updateComplete;
    expect(tilt.getAttribute('aria-valuetext')).toBe('1° up');
    lamp().renderRoot.querySelector('button')?.click();
    expect(stage.lamp).toEqual(usualLamp);
  });

  test('moves nothing of its own accord', async () => {
    await until('the picture', () => strip().renderRoot.querySelector('canvas')!.width > 0);
    const before = { lamp: stage.lamp, moving: stage.moving };
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect({ lamp: stage.lamp, moving: stage.moving }).toEqual(before);
  });

  test('a picture under a new lamp takes the place of the old one', async () => {
    const canvas = strip().renderRoot.querySelector('canvas')!;
    await until('the picture', () => canvas.width > 0);
    const pixels = (): string => canvas.getContext('2d')!.getImageData(0, 0, canvas.width, 60).data.join(',');
    const before = pixels();
    stage.lamp = { fromDeg: 90, elevationDeg: 20, tiltDeg: 0 };
    await until('another picture', () => pixels() !== before);
  });
});

test('the scale is stated and follows the distance', async () => {
  const scale = (): string => stage.renderRoot.querySelector('.under svg')?.parentElement?.textContent?.trim() ?? '';
  // At 250 mm, for a reader at 600 mm and 96 px to the inch: 600 / 250 * 96 / 25.4 = 9.07 px to a millimetre; 5 mm are 45 px, 10 mm more than 88.
  expect(scale()).toBe('5 mm');
  button('700 mm').click();
  await stage.updateComplete;
  expect(strip().magnification).toBe(1);
  // 3.24 px to a millimetre: 20 mm are 65 px.
  expect(scale()).toBe('20 mm');
  button('100 mm').click();
  await stage.updateComplete;
  expect(strip().magnification).toBe(7);
  expect(scale()).toBe('2 mm');
});

test('exaggeration changes the colours that are painted, and both gaps can be shown', async () => {
  const own = strip().sides[0].rgb!;
  button('×10').click();
  await stage.updateComplete;
  expect(strip().sides[0].rgb![1]).toBeLessThan(own[1]);
  expect(strip().sides[1].rgb![1]).toBeGreaterThan(own[1]);
  button('closed').click();
  await stage.updateComplete;
  expect(strip().closed).toBe(true);
});

test('has no fault of access', async () => {
  await until('the picture', () => strip().renderRoot.querySelector('canvas')!.width > 0);
  expect(await faultsOfAccess(stage)).toEqual([]);
});
