import { expect, test } from 'vitest';
import { addSurfaceReading } from '../../src/actions/reading-actions.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import type { TextureReading } from '../../src/readings/reading.ts';
import { smallCabin } from '../support/small-cabin.ts';

const cabin = smallCabin();
const specimen = 'du-1';
const conditions = cabin.conditions[0]!.id;
const texture: TextureReading = { quantity: 'texture', spot: { name: 'middle' }, conditions, parameters: { saUm: 6.3, salMm: 0.31, str: 0.62 } };
const file = { id: 'dash', name: 'dash.sdf', sha256: 'a'.repeat(64) };
const readingsOf = (of: Cabin) => cabinIndex(of).specimens.get(specimen)!.specimen.readings;

test('parameters of a surface become a reading of the specimen, which names the file they came from', () => {
  const { value, issues } = addSurfaceReading.run(cabin, { specimen, texture, file });
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(readingsOf(value!).length).toBe(readingsOf(cabin).length + 1);
  expect(readingsOf(value!).at(-1)).toEqual({ ...texture, file: 'dash', row: 1 });
  expect(value!.files?.at(-1)).toEqual(file);
  expect(restoreCabin(JSON.parse(JSON.stringify(value))).value).toEqual(value);
  expect(addSurfaceReading.label({ specimen, texture, file }, cabin)).toBe('Add texture of dash.sdf to specimen du-1');
});

test('another file of the same name gets an id of its own', () => {
  const once = addSurfaceReading.run(cabin, { specimen, texture, file }).value!;
  const twice = addSurfaceReading.run(once, { specimen, texture, file: { ...file, sha256: 'b'.repeat(64) } }).value!;
  expect(twice.files?.map(({ id }) => id)).toEqual([...(cabin.files ?? []).map(({ id }) => id), 'dash', 'dash-2']);
  expect(readingsOf(twice).at(-1)?.file).toBe('dash-2');
});

test('a file that was read before, another quantity, and a specimen or conditions that are not there are refused', () => {
  const refused = (...[of, values]: Parameters<typeof addSurfaceReading.run>): readonly string[] => {
    const { value, issues } = addSurfaceReading.run(of, values);
    expect(value).toBeUndefined();
    return issues.filter(({ severity }) => severity === 'error').map(({ code }) => code);
  };
  const once = addSurfaceReading.run(cabin, { specimen, texture, file }).value!;
  expect(refused(once, { specimen, texture, file: { ...file, name: 'renamed.sdf' } })).toEqual(['file-already-read']);
  expect(refused(cabin, { specimen, texture: { quantity: 'gloss', spot: { name: 'x' }, conditions, angle: 60, gloss: 2 }, file })).toEqual(['not-a-texture']);
  expect(refused(cabin, { specimen: 'nobody', texture, file })).toEqual(['unknown-specimen']);
  expect(refused(cabin, { specimen, texture: { ...texture, conditions: 'none' }, file }).length).toBeGreaterThan(0);
  expect(refused(cabin, { specimen, texture: { ...texture, parameters: {} }, file })).toEqual(['nothing-measured']);
});
