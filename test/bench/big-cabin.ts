import type { Cabin, Joint, Part, Zone } from '../../src/cabin/cabin.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** How large a cabin is made. */
export interface BigCabinSize {
  readonly parts: number;
  readonly joints: number;
  readonly seed: number;
  /** Spots of colour and of gloss on every specimen. */
  readonly spots?: number;
}

const startNm = 400;
const stepNm = 10;
const count = 31;
const zoneSide = 10;
const materials = ['moulded', 'soft-skin', 'painted', 'leather'] as const;
const side = 60;

/**
 * Invented: parts as squares on a grid, in zones of ten by ten, joined to the neighbours on the right, below and across, then by sight
 * lines to the second and third on the right until there are as many joints as asked for. Colours wander about one dark grey with the
 * spread that a mixed set of suppliers would show; every part has one source and one specimen with spectra and gloss. The same seed
 * gives the same cabin.
 */
export function bigCabin({ parts, joints, seed, spots = 5 }: BigCabinSize): Cabin {
  const random = seededNumbers(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const columns = Math.ceil(Math.sqrt(parts));
  const places = Array.from({ length: parts }, (_, index) => [index % columns, Math.floor(index / columns)] as const);
  const zoneOf = ([column, row]: readonly [number, number]): string => `zone-${Math.floor(column / zoneSide)}-${Math.floor(row / zoneSide)}`;
  const zones = [...new Set(places.map(zoneOf))].map((id): Zone => ({ id, name: id }));
  return {
    format: 'adjoin-cabin', version: 1, id: `big-${parts}-${joints}-${seed}`, name: `Big cabin of ${parts} parts (invented)`, asOf: '2031-03-01',
    zones,
    suppliers: Array.from({ length: 8 }, (_, index) => ({ id: `supplier-${index}`, name: `Supplier ${index} (invented)` })),
    instruments: [
      { id: 'spectro', name: 'Bench (invented)', kind: 'spectrophotometer', serial: '1', calibratedOn: '2031-02-01', calibrationDays: 365 },
      { id: 'meter', name: 'Gloss (invented)', kind: 'glossmeter', serial: '2', calibratedOn: '2031-02-01', calibrationDays: 365 },
    ],
    conditions: [
      { id: 'colour', instrument: 'spectro', geometry: '45c:0', apertureMm: 8, uv: 'excluded' },
      { id: 'gloss', instrument: 'meter' },
    ],
    parts: places.map((place, index) => partAt(index, place, zoneOf(place), random, normal, spots)),
    joints: jointsOf(places, columns, joints),
    ruleBook: 'ciede2000',
  };
}

function partAt(index: number, [column, row]: readonly [number, number], zone: string, random: () => number, normal: () => number, spots: number): Part {
  const id = `part-${index}`;
  const material = materials[Math.floor(random() * materials.length)] ?? 'moulded';
  const level = 0.05 * (1 + 0.02 * normal());
  const tilt = 0.001 * normal();
  const gloss = Math.max(0.5, 2 + 0.3 * normal());
  const readings: Reading[] = [];
  for (let spot = 0; spot < spots; spot += 1) {
    const lift = 1 + 0.004 * normal();
    readings.push({
      quantity: 'spectrum', spot: { name: `s${spot}` }, conditions: 'colour', startNm, stepNm, measuredAt: '2031-02-20',
      values: Array.from({ length: count }, (_, place) => Math.round(1e5 * lift * (level + (tilt * (place - 15)) / 15)) / 1e5),
    });
    readings.push({ quantity: 'gloss', spot: { name: `g${spot}` }, conditions: 'gloss', angle: 60, gloss: Math.round(100 * (gloss + 0.05 * normal())) / 100, measuredAt: '2031-02-20' });
  }
  const [left, top] = [side * column, side * row];
  return {
    id, name: `Part ${index}`, zone, outline: [[left, top], [left + side, top], [left + side, top + side], [left, top + side]],
    sources: [{
      id: `${id}-source`, supplier: `supplier-${Math.floor(random() * 8)}`, material, surface: 'solid', status: 'approved',
      specimens: [{ id: `${id}-specimen`, kind: 'tool part', lot: { id: `lot-${index}` }, producedOn: '2031-02-10', readings }],
    }],
  };
}

function jointsOf(places: readonly (readonly [number, number])[], columns: number, wanted: number): readonly Joint[] {
  const joints: Joint[] = [];
  const steps = [[1, 0, 'edge'], [0, 1, 'gap'], [1, 1, 'seam'], [2, 0, 'sightline'], [3, 0, 'sightline']] as const;
  for (const [right, down, kind] of steps) {
    places.forEach(([column, row], index) => {
      const other = (row + down) * columns + column + right;
      if (joints.length >= wanted || column + right >= columns || other >= places.length) return;
      joints.push({
        id: `joint-${joints.length}`, parts: [`part-${index}`, `part-${other}`], kind, viewMm: 700, ...(kind === 'gap' ? { gapMm: 3 } : {}),
      });
    });
  }
  return joints;
}
