import { describe, expect, it } from 'vitest';
import type { Cabin, TileSet } from '../../src/cabin/cabin.ts';
import { checkChanges } from '../../src/cabin/check-changes.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import { glossReadings, smallCabin, smallCurves, spectrumReadings } from '../support/small-cabin.ts';

const set: TileSet = {
  id: 'tiles-a', name: 'Shared tiles (invented)', note: 'Two tiles, three instruments.',
  tiles: [
    { id: 'grey', name: 'Grey', readings: [...spectrumReadings(smallCurves.cloth, 1), ...spectrumReadings(smallCurves.cloth, 1, 'colour-b'), ...glossReadings(85, 2)] },
    { id: 'black', readings: spectrumReadings(smallCurves.black, 2) },
  ],
};

describe('tile sets in a cabin', () => {
  const cabin = smallCabin({ tileSets: [set] });

  it('are written and read back as they were', () => {
    const text = serialiseCabin(cabin);
    expect(parseCabin(text)).toEqual({ value: cabin, issues: [] });
    expect(text.indexOf('"tileSets"')).toBeLessThan(text.indexOf('"parts"'));
  });

  it('may be edited: the changed set alone is looked into', () => {
    const renamed: Cabin = { ...cabin, tileSets: [{ ...set, name: 'Other name' }] };
    expect(checkChanges(cabin, renamed)).toEqual({ value: renamed, issues: [] });
    const faulty: Cabin = { ...cabin, tileSets: [{ ...set, tiles: [] }] };
    expect(checkChanges(cabin, faulty).issues.map(({ code, path }) => [code, path])).toEqual([['too-few', 'tileSets[0].tiles']]);
  });

  it('are pointed out where a tile was read after the day of the cabin', () => {
    const late = { ...cabin, tileSets: [{ ...set, tiles: [{ id: 'late', readings: spectrumReadings(smallCurves.cloth, 1).map((reading) => ({ ...reading, measuredAt: '2031-03-02' })) }] }] };
    expect(parseCabin(serialiseCabin(late)).issues.map(({ code, path }) => [code, path])).toEqual([['later-than-as-of', 'tileSets[0].tiles[0].readings[0].measuredAt']]);
  });
});
