import { describe, expect, it } from 'vitest';
import { conditionCautions } from '../../src/readings/condition-cautions.ts';
import { geometryClass } from '../../src/readings/geometry-class.ts';
import { compareGeometries, geometryKinds, geometryTable } from '../../src/readings/geometry-table.ts';
import type { Conditions, Geometry, Reading } from '../../src/readings/reading.ts';
import { geometries } from '../../src/readings/reading.ts';
import { groupColourReadings } from '../../src/readings/reading-groups.ts';
import { specularCue } from '../../src/readings/specular-cue.ts';

const pairs = geometries.flatMap((first) => geometries.map((second): [Geometry, Geometry] => [first, second]));

describe('the table of geometries', () => {
  it('has every unordered pair of kinds once', () => {
    const n = geometryKinds.length;
    expect(geometryTable).toHaveLength((n * (n + 1)) / 2);
    expect(new Set(geometryTable.map(({ kinds }) => [...kinds].sort().join('|'))).size).toBe(geometryTable.length);
  });

  it.each(pairs)('says of %s and %s the same in either order, and compares within a class only', (first, second) => {
    const rule = compareGeometries(first, second);
    expect(compareGeometries(second, first)).toBe(rule);
    // The classes of geometries: 45:0 whatever its ring, d:8 with and without the specular part apart, nothing for the unknown (CIE 015:2018).
    const alike = geometryClass(first) === geometryClass(second) && geometryClass(first) !== 'unknown';
    expect(rule.comparison === 'not compared').toBe(!alike);
  });

  it('cautions against directional and annular light, and nothing else', () => {
    const cautioned = pairs.filter(([first, second]) => compareGeometries(first, second).comparison === 'with a caution').map((pair) => pair.toSorted().join(' '));
    expect(new Set(cautioned)).toEqual(new Set(['45x:0', '0:45x'].flatMap((one) => ['45a:0', '45c:0', '0:45a', '0:45c'].map((other) => [one, other].toSorted().join(' ')))));
  });

  it('never compares what is not stated', () => {
    for (const geometry of geometries) expect(compareGeometries(geometry, undefined).comparison).toBe('not compared');
  });
});

const conditions = new Map<string, Conditions>([
  ['in', { id: 'in', instrument: 'ball', geometry: 'di:8', apertureMm: 12, uv: 'excluded' }],
  ['ex', { id: 'ex', instrument: 'ball', geometry: 'de:8', apertureMm: 12, uv: 'excluded' }],
  ['other', { id: 'other', instrument: 'another ball', geometry: 'de:8', apertureMm: 12, uv: 'excluded' }],
]);
const grey = (id: string, L: number): Reading =>
  ({ quantity: 'cielab', spot: { name: '1' }, conditions: id, lab: [L, 0, 0], light: 'D65', observer: 10 });
const groups = (...readings: Reading[]) => groupColourReadings(readings, conditions).groups;

describe('the pair of sphere readings as a cue of gloss', () => {
  it('is the difference of the luminance factors', () => {
    // L* of ISO/CIE 11664-4: Y = 100 ((L + 16) / 116)^3 above L* = 8. Y 5 less Y 1: L* 26.73 and 8.99 (to two decimals).
    const cue = specularCue(groups(grey('in', 26.73), grey('ex', 8.99)));
    expect(cue?.yIncluded).toBeCloseTo(100 * ((26.73 + 16) / 116) ** 3, 10);
    expect(cue?.difference).toBeCloseTo(4, 2);
    // Fresnel at normal incidence for n = 1.5: (0.5 / 2.5)^2 = 4 %; at 8 degrees the mean of both polarisations is the same to three digits.
    expect(cue?.ceiling).toBeCloseTo(4, 2);
  });

  it('needs both geometries on one instrument', () => {
    expect(specularCue(groups(grey('in', 26)))).toBeUndefined();
    expect(specularCue(groups(grey('in', 26), grey('other', 9)))).toBeUndefined();
  });

  it('raises the caution of gloss hidden by the sphere where no glossmeter spoke', () => {
    const [one] = groups(grey('in', 26));
    const codes = (about: object): string[] => conditionCautions(one, one, about).map(({ code }) => code);
    expect(codes({ meanL: 26, cueDifference: 2 })).toEqual(['gloss hidden by sphere']);
    expect(codes({ meanL: 26, cueDifference: 0.1 })).toEqual([]);
    expect(codes({ meanL: 70, cueDifference: 2 })).toEqual([]);
    // A glossmeter goes before the cue.
    expect(codes({ meanL: 26, glossDifference: 0.5, cueDifference: 2 })).toEqual([]);
    expect(codes({ meanL: 26, glossDifference: 5 })).toEqual(['gloss hidden by sphere']);
  });
});
