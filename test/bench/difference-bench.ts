import { diff } from 'color-diff';
import { deltaE2000, Lab as labSpace } from 'colorjs.io/fn';
import { differenceCiede2000 } from 'culori';
import { differenceBatch, labColumns } from '../../src/colour/batch/index.ts';
import type { LabColumns } from '../../src/colour/batch/index.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { checksumOf, interleaved, scaled } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

const pairs = 20_000;
const rounds = 15;

/** Colours over the gamut of surface colours, each with a neighbour as far as parts of a cabin are. */
function pairsOfColours(): readonly [LabColumns, LabColumns] {
  const random = seededNumbers(2000);
  const [standard, trial] = [labColumns(pairs), labColumns(pairs)];
  for (let i = 0; i < pairs; i += 1) {
    [standard.L[i], standard.a[i], standard.b[i]] = [10 + 80 * random(), 80 * random() - 40, 80 * random() - 40];
    [trial.L[i], trial.a[i], trial.b[i]] = [standard.L[i]! + 3 * random(), standard.a[i]! + 3 * random(), standard.b[i]! + 3 * random()];
  }
  return [standard, trial];
}

/** CIEDE2000 of many pairs, beside general-purpose libraries that are given their own objects, made beforehand, in a space they need not convert. */
export function differenceBenchmark(): readonly BenchLine[] {
  const [standard, trial] = pairsOfColours();
  const rows = Array.from({ length: pairs }, (_, i) => [standard, trial].map(({ L, a, b }) => [L[i]!, a[i]!, b[i]!] as const));
  const forCulori = rows.map((row) => row.map(([l, a, b]) => ({ mode: 'lab65' as const, l, a, b })));
  const forColorjs = rows.map((row) => row.map((coords) => ({ space: labSpace, coords: [...coords] as [number, number, number], alpha: 1 })));
  const forColorDiff = rows.map((row) => row.map(([L, a, b]) => ({ L, a, b })));
  const byCulori = differenceCiede2000();
  const [own, culori, colorjs, colorDiff] = [new Float64Array(pairs), new Float64Array(pairs), new Float64Array(pairs), new Float64Array(pairs)];
  const { ms, ratio } = interleaved(rounds, {
    own: () => differenceBatch({ name: 'ciede2000' }, standard, trial, own),
    culori: () => forCulori.forEach(([first, second], i) => { culori[i] = byCulori(first!, second!); }),
    colorjs: () => forColorjs.forEach(([first, second], i) => { colorjs[i] = deltaE2000(first!, second!); }),
    colorDiff: () => forColorDiff.forEach(([first, second], i) => { colorDiff[i] = diff(first!, second!); }),
  });
  for (const other of [culori, colorjs, colorDiff]) {
    for (let i = 0; i < pairs; i += 1) if (Math.abs(other[i]! - own[i]!) > 1e-6) throw new Error(`pair ${i}: ${own[i]} here, ${other[i]} beside`);
  }
  const perPair = 1e6 / pairs;
  return (['culori', 'colorjs', 'colorDiff'] as const).map((peer): BenchLine => ({
    name: 'CIEDE2000, a pair', unit: 'ns', own: scaled(ms.own, perPair),
    beside: { name: { culori: 'culori', colorjs: 'colorjs.io', colorDiff: 'color-diff' }[peer], figure: scaled(ms[peer], perPair) },
    ratio: ratio(peer, 'own'), ...(peer === 'culori' ? { wanted: 'at least 5' } : {}), checksum: checksumOf(own),
  }));
}
