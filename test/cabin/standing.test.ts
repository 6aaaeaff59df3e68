import { describe, expect, it } from 'vitest';
import type { Cabin, Part, Source, Specimen, SpecimenKind } from '../../src/cabin/cabin.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import { sourceOf } from '../../src/cabin/source-of.ts';
import { standingOf } from '../../src/cabin/standing.ts';
import { standingSpecimen } from '../../src/cabin/standing-specimen.ts';
import { glossReadings, smallCabin, smallCurves, spectrumReadings } from '../support/small-cabin.ts';
import { changeNode, withNode } from '../support/edit-json.ts';

const specimen = (id: string, kind: SpecimenKind, producedOn?: string, more: Partial<Specimen> = {}): Specimen =>
  ({ id, kind, readings: spectrumReadings(smallCurves.slate, 1), ...(producedOn === undefined ? {} : { producedOn }), ...more });
const source = (specimens: readonly Specimen[], more: Partial<Source> = {}): Source =>
  ({ id: 'a', supplier: 's', material: 'moulded', surface: 'solid', status: 'approved', specimens, ...more });
const standing = (from: Source, stage = 'new'): string | undefined => standingSpecimen(from, stage)?.id;

describe('standingSpecimen', () => {
  it('takes series before tool part before plaque, whatever their days', () => {
    const all = [specimen('plaque', 'plaque', '2031-03-01'), specimen('series', 'series part', '2031-01-01'), specimen('tool', 'tool part', '2031-02-01')];
    expect(standing(source(all))).toBe('series');
    expect(standing(source(all.filter(({ id }) => id !== 'series')))).toBe('tool');
  });

  it('takes the latest of a kind; undated ones only where nothing is dated', () => {
    expect(standing(source([specimen('late', 'plaque', '2031-02-02'), specimen('early', 'plaque', '2031-02-01'), specimen('undated', 'plaque')]))).toBe('late');
    expect(standing(source([specimen('first', 'plaque'), specimen('last', 'plaque')]))).toBe('last');
  });

  it('never takes a master or a boundary sample, not even when picked', () => {
    const from = source([specimen('m', 'master', '2031-03-01'), specimen('b', 'boundary sample', '2031-03-01'), specimen('p', 'plaque')], { standsBy: { new: 'm' } });
    expect(standing(from)).toBe('p');
    expect(standing(source(from.specimens.slice(0, 2)))).toBeUndefined();
  });

  it('takes the pick for the stage, and one given with the question before that', () => {
    const from = source([specimen('s', 'series part'), specimen('p', 'plaque'), specimen('q', 'plaque')], { standsBy: { new: 'p' } });
    expect(standing(from)).toBe('p');
    expect(standingSpecimen(from, 'new', undefined, 'q')?.id).toBe('q');
    expect(standingSpecimen(from, 'new', 'gloss')?.id).toBe('p');
  });

  it('keeps the stages apart', () => {
    const from = source([specimen('new', 'plaque'), specimen('aged', 'plaque', '2031-01-01', { exposure: { stage: 'light-exposed' } })]);
    expect([standing(from), standing(from, 'light-exposed'), standing(from, 'constructor')]).toEqual(['new', 'aged', undefined]);
  });

  it('passes over specimens without readings of the quantity asked for', () => {
    const from = source([specimen('colour', 'series part'), specimen('gloss', 'plaque', undefined, { readings: glossReadings(2, 1) }), specimen('bare', 'series part', '2031-03-01', { readings: [] })]);
    expect([standing(from), standingSpecimen(from, 'new', 'gloss')?.id, standingSpecimen(from, 'new', 'texture')]).toEqual(['colour', 'gloss', undefined]);
  });
});

const part = (cabin: Cabin, id: string): Part => {
  const found = cabinIndex(cabin).parts.get(id);
  if (found === undefined) throw new Error(`no part ${id}`);
  return found;
};

describe('sourceOf', () => {
  it('takes the pick, the own choice, the first', () => {
    const lower = part(smallCabin(), 'dash-lower');
    expect([sourceOf(lower).id, sourceOf(lower, 'alt').id, sourceOf(lower, 'none').id, sourceOf({ ...lower, source: undefined }).id]).toEqual(['ppx', 'alt', 'ppx', 'ppx']);
  });
});

describe('standingOf', () => {
  it('borrows from the other hand, marked, whichever of the two was measured', () => {
    const cabin = smallCabin();
    expect(standingOf(cabin, part(cabin, 'door-right'), 'new')).toMatchObject({ specimen: { id: 'do-1' }, borrowedFrom: 'door-left' });
    expect(standingOf(cabin, part(cabin, 'door-left'), 'new')).not.toHaveProperty('borrowedFrom');
    const readings = cabin.parts[2]?.sources[0]?.specimens;
    const otherWay = withNode(withNode(cabin, 'parts[3].sources[0].specimens', readings), 'parts[2].sources[0].specimens', []) as Cabin;
    expect(standingOf(otherWay, part(otherWay, 'door-left'), 'new')).toMatchObject({ specimen: { id: 'do-1' }, borrowedFrom: 'door-right' });
  });

  it('borrows nothing of another material, supplier, grain or stage', () => {
    for (const [path, value] of [['material', 'painted'], ['supplier', 'ferrow'], ['grain', { id: 'slate' }]] as const) {
      const cabin = withNode(smallCabin(), `parts[3].sources[0].${path}`, value) as Cabin;
      expect(standingOf(cabin, part(cabin, 'door-right'), 'new'), path).toBeUndefined();
    }
    const cabin = smallCabin();
    expect(standingOf(cabin, part(cabin, 'door-right'), 'light-exposed')).toBeUndefined();
  });

  it('borrows one quantity and keeps its own readings of another', () => {
    const own = { id: 'own', kind: 'plaque', readings: glossReadings(2, 2) };
    const cabin = changeNode(smallCabin(), 'parts[3].sources[0].specimens', () => [own]) as Cabin;
    expect(standingOf(cabin, part(cabin, 'door-right'), 'new', 'colour')?.borrowedFrom).toBe('door-left');
    expect(standingOf(cabin, part(cabin, 'door-right'), 'new', 'gloss')).toMatchObject({ specimen: { id: 'own' } });
  });
});
