import type { Part } from '../cabin/cabin.ts';
import { sourceOf } from '../cabin/source-of.ts';
import { standingOf } from '../cabin/standing.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import type { MeasuredSide } from '../readings/instrument-correlation.ts';
import { glossSamples } from '../readings/gloss-sample.ts';
import { measuredDays } from '../readings/measured-side.ts';
import type { Reading } from '../readings/reading.ts';
import { textureSample } from '../readings/texture-sample.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis, Stand } from './part-basis.ts';

/**
 * What a part is judged on at the stage: specimen and readings for colour, gloss and texture, borrowed ones marked.
 * With a `pick` the part is taken to stand by that source of its own, whatever the document says.
 */
export function partBasis(context: JudgeContext, part: Part, pick?: string): PartBasis {
  const { cabin, index, stage } = context;
  const source = sourceOf(part, pick);
  const stand = (quantity: 'colour' | 'gloss' | 'texture'): Stand | undefined => standingOf(cabin, part, stage, quantity, pick);
  const colour = stand('colour');
  const gloss = stand('gloss');
  const texture = stand('texture');
  const groups = colour === undefined ? [] : groupColourReadings(colour.specimen.readings, index.conditions).groups;
  const samples = gloss === undefined ? [] : glossSamples(gloss.specimen.readings, index.conditions);
  const sample = texture === undefined ? undefined : textureSample(texture.specimen.readings, index.conditions);
  const measured = (readings: readonly Reading[], quantity: Reading['quantity'], instrument: string | undefined): MeasuredSide => ({
    instrument: index.instruments.get(instrument ?? ''),
    ...measuredDays(readings.filter((reading) => reading.quantity === quantity)),
  });
  return {
    part,
    source,
    materialClass: context.rules.materialClass(source.material),
    colour: colour === undefined || groups.length === 0 ? undefined : { ...colour, groups },
    gloss: gloss === undefined || samples.length === 0 ? undefined
      : { ...gloss, samples, measured: measured(gloss.specimen.readings, 'gloss', samples[0]?.instruments[0]) },
    texture: texture === undefined || sample === undefined ? undefined
      : { ...texture, sample, measured: measured(texture.specimen.readings, 'texture', sample.instrument) },
  };
}
