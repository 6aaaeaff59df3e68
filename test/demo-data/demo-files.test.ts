import { describe, expect, it } from 'vitest';
import { demoFiles } from '../../demo-data/generator/demo-files.ts';
import { materials } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/index.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { cabinNames, demoCabin, demoText, partOf } from './demo-cabins.ts';

describe('the demo files', () => {
  const made = demoFiles();

  it.each(Object.keys(made))('%s has the bytes that the generator makes', (name) => {
    // Compared as a flag: a difference in a megabyte is nothing to print.
    expect(demoText(name) === made[name]).toBe(true);
  });

  it.each([...cabinNames, 'lots'] as const)('%s is restored without a fault', (name) => {
    expect(restoreCabin(JSON.parse(demoText(`${name}.cabin.json`))).issues).toEqual([]);
  });

  it.each([...cabinNames, 'lots'] as const)('%s says that it is invented', (name) => {
    expect(demoCabin(name).note).toMatch(/invented/iu);
  });

  it('the big cabins stay below 1.5 MB', () => {
    for (const name of cabinNames) expect(Buffer.byteLength(demoText(`${name}.cabin.json`))).toBeLessThan(1_500_000);
  });
});

describe.each(['shuttle-slate', 'shuttle-chalk'] as const)('%s', (name) => {
  const cabin = demoCabin(name);
  const sources = cabin.parts.flatMap((part) => part.sources);
  const specimens = sources.flatMap((source) => source.specimens);

  it('has at least 42 parts in all eleven materials and at least 80 joints', () => {
    expect(cabin.parts.length).toBeGreaterThanOrEqual(42);
    expect(cabin.joints.length).toBeGreaterThanOrEqual(80);
    expect(new Set(sources.map((source) => source.material))).toEqual(new Set(materials));
  });

  it('has 3 to 8 spots of colour on every specimen, those of pile and cloth turned four times', () => {
    const colour = (readings: readonly Reading[]) =>
      readings.filter((reading) => reading.quantity === 'spectrum' || reading.quantity === 'cielab');
    for (const specimen of specimens) {
      const spots = new Set(colour(specimen.readings).map((reading) => reading.spot.name)).size;
      expect(spots, specimen.id).toBeGreaterThanOrEqual(3);
      expect(spots, specimen.id).toBeLessThanOrEqual(8);
    }
    for (const source of sources.filter(({ material }) => material === 'textile' || material === 'carpet' || material === 'headliner')) {
      for (const specimen of source.specimens) {
        expect(new Set(colour(specimen.readings).map((reading) => reading.rotationDeg)), specimen.id).toEqual(new Set([0, 90, 180, 270]));
      }
    }
  });

  it('has parts with two to four sources, suppliers, modules, lots and prices by volume', () => {
    const several = cabin.parts.filter((part) => part.sources.length >= 2);
    expect(several.length).toBeGreaterThanOrEqual(8);
    expect(Math.max(...cabin.parts.map((part) => part.sources.length))).toBeLessThanOrEqual(4);
    expect(new Set(sources.map((source) => source.supplier)).size).toBeGreaterThanOrEqual(6);
    expect(new Set(cabin.parts.map((part) => part.module).filter(Boolean)).size).toBeGreaterThanOrEqual(4);
    expect(sources.some((source) => source.specimens.filter((specimen) => !specimen.exposure).length >= 3)).toBe(true);
    expect(sources.every((source) => (source.volumePrices?.length ?? 0) >= 3)).toBe(true);
  });

  it('has hands that were measured once and borrow from their mirror', () => {
    const unmeasured = cabin.parts.filter((part) => part.sources.every((source) => source.specimens.length === 0));
    expect(unmeasured.length).toBeGreaterThanOrEqual(4);
    for (const part of unmeasured) {
      expect(part.mirrorOf, part.id).toBeDefined();
      expect(partOf(cabin, part.mirrorOf ?? '').sources[0].specimens.length).toBeGreaterThan(0);
    }
  });

  it('holds every measured part to a master, but for the patterned and the CIELAB-only ones', () => {
    const free = cabin.parts
      .filter((part) => !part.target && part.sources.some((source) => source.specimens.length > 0))
      .map((part) => part.id);
    expect(free).toEqual(['demister-grille', 'decor-dash-left', 'decor-dash-right']);
  });

  it('names a file with its digest and a row behind every reading', () => {
    const files = new Set(cabin.files?.map((file) => file.id));
    const rows = new Set<string>();
    for (const reading of [...specimens, ...(cabin.masters ?? [])].flatMap((specimen) => specimen.readings)) {
      expect(files.has(reading.file ?? '')).toBe(true);
      rows.add(`${reading.file} ${reading.row}`);
    }
    const readings = [...specimens, ...(cabin.masters ?? [])].reduce((sum, specimen) => sum + specimen.readings.length, 0);
    expect(rows.size).toBe(readings);
  });

  it('has reflectance within 0 and 1, without a jump of more than a tenth between neighbours', () => {
    const strange: string[] = [];
    for (const specimen of specimens) {
      for (const reading of specimen.readings) {
        if (reading.quantity !== 'spectrum') continue;
        reading.values.forEach((value, index) => {
          const nm = reading.startNm + index * reading.stepNm;
          // The edge of titania below 420 nm is steep, as it is in white paint.
          const jump = index > 0 && nm > 420 ? Math.abs(value - reading.values[index - 1]) : 0;
          if (!(value > 0 && value < 1 && jump < 0.1)) strange.push(`${specimen.id} at ${nm} nm: ${value}`);
        });
      }
    }
    expect(strange).toEqual([]);
  });
});

describe('the two colourways', () => {
  const slate = demoCabin('shuttle-slate');
  const chalk = demoCabin('shuttle-chalk');

  it('share the readings of the parts that are carried over, which are frozen', () => {
    const frozen = chalk.parts.filter((part) => part.frozen);
    expect(frozen.length).toBeGreaterThanOrEqual(20);
    const bare = (readings: readonly Reading[]) => readings.map(({ row: _row, ...reading }) => reading);
    for (const part of frozen) {
      const other = partOf(slate, part.id);
      expect(part.partNumber).toBe(other.partNumber);
      part.sources.forEach((source, at) =>
        source.specimens.forEach((specimen, index) => {
          expect(bare(specimen.readings), specimen.id).toEqual(bare(other.sources[at].specimens[index].readings));
        }),
      );
    }
  });

  it('share the map and the joints', () => {
    expect(chalk.parts.map((part) => part.outline)).toEqual(slate.parts.map((part) => part.outline));
    expect(chalk.joints.map((joint) => joint.id)).toEqual(slate.joints.map((joint) => joint.id));
  });
});

describe('the learning cabin', () => {
  it('has six parts and six joints', () => {
    const cabin = demoCabin('first-steps');
    expect(cabin.parts).toHaveLength(6);
    expect(cabin.joints).toHaveLength(6);
  });
});
