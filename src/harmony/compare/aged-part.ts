import type { Exposure, Source, Specimen } from '../../cabin/cabin.ts';
import { standingSpecimen, stageOf } from '../../cabin/standing-specimen.ts';
import type { Components } from '../../colour/components.ts';
import { components } from '../../colour/components.ts';
import { differenceWords } from '../../colour/difference-words.ts';
import type { GreyScaleGrade } from '../../colour/grey-scale.ts';
import { greyScaleGrade, greyScaleGrades } from '../../colour/grey-scale.ts';
import type { Lab } from '../../quantities.ts';
import { glossSamples } from '../../readings/gloss-sample.ts';
import { textureSample } from '../../readings/texture-sample.ts';
import type { GeometryClass, GlossAngle } from '../../readings/reading.ts';
import type { ReadingGroup } from '../../readings/reading-groups.ts';
import { groupColourReadings } from '../../readings/reading-groups.ts';
import { pickSharedGroup } from '../../readings/shared-group.ts';
import type { JudgeContext } from '../judge-context.ts';
import { figure, listed } from '../wording.ts';

/** A part before and after an exposure: CIELAB under D65, 10° observer, exposed minus unexposed, and its grade of change. */
export interface AgedPart {
  readonly part: string;
  readonly name: string;
  readonly source: string;
  readonly unexposed: string;
  readonly exposed: string;
  readonly exposure?: Exposure;
  readonly geometry: GeometryClass;
  readonly instruments: readonly [string, string];
  readonly spots: readonly [unexposed: number, exposed: number];
  readonly from: Lab;
  readonly to: Lab;
  readonly difference: Components;
  /** ΔE*ab of CIE 1976. */
  readonly cie76: number;
  /** ΔE_F and the grade of ISO 105-A05: continuous, and as the band it falls in. */
  readonly greyScale: { readonly difference: number; readonly value: number; readonly grade: GreyScaleGrade };
  /** The grade is at least the one wanted. */
  readonly fast: boolean;
  readonly words: readonly string[];
  readonly gloss: readonly { readonly angle: GlossAngle; readonly from: number; readonly to: number; readonly change: number }[];
  /** Mean Sa, micrometres, where both specimens have it. */
  readonly texture?: { readonly from: number; readonly to: number; readonly change: number };
  readonly sentence: string;
}

/** Grade of change that a part is wanted to keep. */
export const wantedGrade: { readonly grade: GreyScaleGrade; readonly basis: string } = { grade: '4', basis: 'common practice, no source' };

/** Change in ageing is measured with a sphere, the specular part included (SAE J1767); another geometry that both have serves where there is none. */
const ageingGeometry: GeometryClass = 'di:8';

/** The grade of one part, or why there is none. */
export function agedPart(context: JudgeContext, part: { readonly id: string; readonly name: string }, source: Source, from: string, stage: string): AgedPart | string | undefined {
  const exposed = standingSpecimen(source, stage, 'colour');
  if (exposed === undefined || stageOf(exposed) !== stage) return undefined;
  const groups = (specimen: Specimen): readonly ReadingGroup[] => groupColourReadings(specimen.readings, context.index.conditions).groups;
  const order = [ageingGeometry, ...context.book.geometryOrder.filter((geometry) => geometry !== ageingGeometry)];
  const found = controlsOf(source, exposed, from).flatMap((control, place) => {
    const choice = pickSharedGroup(groups(control), groups(exposed), order);
    return choice.kind === 'shared' ? [{ control, choice, place }] : [];
  }).sort((first, second) => order.indexOf(first.choice.geometryClass) - order.indexOf(second.choice.geometryClass) || first.place - second.place)[0];
  if (found === undefined) return 'no unexposed specimen was measured under the conditions of the exposed one';
  const { control, choice } = found;
  const light = context.light('D65');
  const [before, after] = [choice.first, choice.second].map((group) => (light === undefined ? undefined : context.sample(group, [{ name: 'D65', light, observer: 10 }])?.means[0]));
  if (before === undefined || after === undefined) return 'there is no colour under D65 for the 10° observer';
  const rating = greyScaleGrade(before, after);
  if (rating.grade === undefined) return 'the colours are not numbers';
  const greyScale = { difference: rating.difference, value: rating.value, grade: rating.grade };
  const difference = components(before, after);
  const gloss = glossChange(context, control, exposed);
  const told = { words: differenceWords(before, after), cie76: Math.hypot(difference.dL, difference.da, difference.db), greyScale, geometry: choice.geometryClass, gloss };
  return {
    part: part.id, name: part.name, source: source.id, unexposed: control.id, exposed: exposed.id,
    ...(exposed.exposure === undefined ? {} : { exposure: exposed.exposure }),
    instruments: [choice.first.instrument, choice.second.instrument].map((id) => context.index.instruments.get(id)?.name ?? id) as [string, string],
    spots: [choice.first.spots, choice.second.spots], from: before, to: after, difference,
    fast: greyScaleGrades.indexOf(greyScale.grade) <= greyScaleGrades.indexOf(wantedGrade.grade),
    ...textureChange(context, control, exposed),
    ...told, sentence: sentenceOf(part.name, stage, told),
  };
}

/** Unexposed specimens of the source: those of the exposed one's lot first, then of its kind, then the one that stands for the source, then the others. */
function controlsOf(source: Source, exposed: Specimen, from: string): readonly Specimen[] {
  const standing = standingSpecimen(source, from, 'colour');
  const closeness = (specimen: Specimen): number => 4 * Number(specimen.lot?.id !== undefined && specimen.lot.id === exposed.lot?.id) + 2 * Number(specimen.kind === exposed.kind) + Number(specimen === standing);
  return source.specimens
    .filter((specimen) => stageOf(specimen) === from && specimen.kind !== 'master' && specimen.kind !== 'boundary sample')
    .map((specimen, place) => ({ specimen, place }))
    .sort((first, second) => closeness(second.specimen) - closeness(first.specimen) || first.place - second.place)
    .map(({ specimen }) => specimen);
}

function glossChange(context: JudgeContext, control: Specimen, exposed: Specimen): AgedPart['gloss'] {
  const before = glossSamples(control.readings, context.index.conditions);
  return glossSamples(exposed.readings, context.index.conditions).flatMap(({ angle, mean }) => {
    const from = before.find((sample) => sample.angle === angle)?.mean;
    return from === undefined ? [] : [{ angle, from, to: mean, change: mean - from }];
  });
}

function textureChange(context: JudgeContext, control: Specimen, exposed: Specimen): Pick<AgedPart, 'texture'> {
  const [from, to] = [control, exposed].map(({ readings }) => textureSample(readings, context.index.conditions)?.parameters.saUm);
  return from === undefined || to === undefined ? {} : { texture: { from, to, change: to - from } };
}

function sentenceOf(name: string, stage: string, { words, cie76, greyScale, geometry, gloss }: Pick<AgedPart, 'words' | 'cie76' | 'greyScale' | 'geometry' | 'gloss'>): string {
  const turned = words.length === 0 ? 'hardly changed' : listed(words);
  const shine = gloss.filter(({ change }) => Math.abs(change) >= 0.05).map(({ angle, change }) => ` Its gloss at ${angle}° changed by ${figure(change)} GU.`).join('');
  return `${name} is ${turned} once ${stage}: ΔE*ab ${figure(cie76)} at ${geometry}, grade ${greyScale.grade} (${figure(greyScale.value)}) by ISO 105-A05.${shine}`;
}
