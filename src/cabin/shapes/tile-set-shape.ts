import type { Tile, TileSet } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { list, name, object, optional, refine, remark, required } from '../schema/index.ts';
import { readingShape } from './reading-shape.ts';

const tileShape: Schema<Tile> = refine(
  object<Tile>('a tile', {
    id: required(name('the id of the tile')),
    name: optional(name('the name of the tile')),
    readings: required(list(readingShape, { max: 1000, items: 'readings' })),
  }),
  ({ readings }, faults) => {
    readings.forEach((reading, index) => {
      if (reading.quantity !== 'difference') return;
      faults.path.push('readings', index, 'quantity');
      faults.add('tile-difference', {
        expected: 'a spectrum, CIELAB, gloss or texture', found: 'a difference', hint: 'Instruments are compared by what each reads of the tile itself.',
      });
      faults.path.length -= 3;
    });
  },
);

export const tileSetShape: Schema<TileSet> = object<TileSet>('a tile set', {
  id: required(name('the id of the tile set')),
  name: required(name('the name of the tile set')),
  note: optional(remark()),
  tiles: required(list(tileShape, { min: 1, max: 1000, items: 'tiles' })),
});
