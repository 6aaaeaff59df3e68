import type { Grain, NamedColour, Source, VolumePrice } from '../cabin.ts';
import { sourceStatuses, surfaces } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { list, name, number, object, oneOf, optional, record, refine, remark, required, withDefault } from '../schema/index.ts';
import { labShape } from './lab-shape.ts';
import { currencyText } from './planning-shape.ts';
import { specimenShape } from './specimen-shape.ts';

const grainShape = object<Grain>('a grain', {
  id: required(name('the id of the grain')),
  depthUm: optional(number({ min: 0, max: 10_000, unit: 'µm' })),
  vdiClass: optional(number({ min: 0, max: 45 })),
});

const share = number({ min: 0, max: 1, hint: 'Shares are parts of 1, not per cent.' });
/** How far named shares may miss 1 in sum: rounding to the per cent. */
const shareRounding = 0.01;

const namedColourShape = object<NamedColour>('a named colour', {
  name: required(name('the name of the colour')),
  areaShare: required(share),
  lab: optional(labShape()),
});

const namedColours = refine(list(namedColourShape, { min: 1, max: 100, items: 'named colours' }), (colours, faults) => {
  const sum = colours.reduce((total, colour) => total + colour.areaShare, 0);
  if (Math.abs(sum - 1) > shareRounding) {
    faults.add('area-shares', { expected: 'area shares that sum to 1', found: `a sum of ${Math.round(sum * 1e6) / 1e6}` });
  }
});

const money = number({ min: 0, max: 1e12 });
const volumePriceShape = object<VolumePrice>('a price by volume', {
  fromVolume: required(number({ min: 0, max: 1e9 })),
  piecePrice: required(money),
});

const volumePrices = refine(list(volumePriceShape, { max: 100, items: 'prices by volume' }), (prices, faults) => {
  const at = prices.findIndex((price, index) => index > 0 && price.fromVolume <= (prices[index - 1]?.fromVolume ?? -1));
  if (at < 0) return;
  faults.path.push(at, 'fromVolume');
  faults.add('not-rising', { expected: 'volumes that rise from one price to the next', found: String(prices[at]?.fromVolume) });
  faults.path.length -= 2;
});

export const sourceShape: Schema<Source> = object<Source>('a source', {
  id: required(name('the id of the source')),
  supplier: required(name('the id of a supplier')),
  plant: optional(name()),
  material: required(name('a material')),
  surface: withDefault(oneOf(surfaces), 'solid'),
  grain: optional(grainShape),
  polymer: optional(name('the name of a polymer')),
  refractiveIndex: optional(number({ min: 1, max: 4 })),
  namedColours: optional(namedColours),
  status: withDefault(oneOf(sourceStatuses), 'candidate'),
  share: optional(share),
  piecePrice: optional(money),
  volumePrices: optional(volumePrices),
  freightPerPiece: optional(money),
  dutyShare: optional(number({ min: 0, max: 10, hint: 'Duty is a part of 1, not per cent.' })),
  toolCost: optional(money),
  setupCost: optional(money),
  currency: optional(currencyText),
  leadWeeks: optional(number({ min: 0, max: 1000, unit: 'weeks' })),
  tool: optional(name()),
  cavities: optional(number({ min: 1, max: 1000, whole: true })),
  standsBy: optional(record('an object of specimen ids by stage', name('the id of a specimen'))),
  specimens: withDefault(list(specimenShape, { max: 5000, items: 'specimens' }), []),
  note: optional(remark()),
});
