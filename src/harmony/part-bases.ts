import type { Part, Source } from '../cabin/cabin.ts';
import { sourceOf } from '../cabin/source-of.ts';
import { standingOf } from '../cabin/standing.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import type { MeasuredSide } from '../readings/instrument-correlation.ts';
import { glossSamples } from '../readings/gloss-sample.ts';
import { measuredDays } from '../readings/measured-side.ts';
import type { Conditions, Reading } from '../readings/reading.ts';
import { textureSample } from '../readings/texture-sample.ts';
import type { JudgeContext } from './judge-context.ts';
import type { NamedColourBasis, PartBasis, Stand } from './part-basis.ts';

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
  const named = colour === undefined ? [] : namedColours(source, colour.specimen.readings, index.conditions);
  const groups = named[0]?.groups ?? (colour === undefined ? [] : groupColourReadings(colour.specimen.readings, index.conditions).groups);
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
    colour: colour === undefined || groups.length === 0 ? undefined : { ...colour, groups, ...(named.length === 0 ? {} : { named }) },
    gloss: gloss === undefined || samples.length === 0 ? undefined
      : { ...gloss, samples, measured: measured(gloss.specimen.readings, 'gloss', samples[0]?.instruments[0]) },
    texture: texture === undefined || sample === undefined ? undefined
      : { ...texture, sample, measured: measured(texture.specimen.readings, 'texture', sample.instrument) },
  };
}

/** The named colours of a patterned source that were read, the largest share of the area first. */
function namedColours(source: Source, readings: readonly Reading[], conditions: ReadonlyMap<string, Conditions>): readonly NamedColourBasis[] {
  if (source.surface !== 'patterned') return [];
  return (source.namedColours ?? [])
    .map(({ name, areaShare }) => ({ name, areaShare, groups: groupColourReadings(readings.filter(({ colour }) => colour === name), conditions).groups }))
    .filter(({ groups }) => groups.length > 0)
    .sort((first, second) => second.areaShare - first.areaShare || (first.name < second.name ? -1 : 1));
}
