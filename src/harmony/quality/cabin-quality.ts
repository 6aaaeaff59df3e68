import { stageOf } from '../../cabin/standing-specimen.ts';
import type { Issue } from '../../issue.ts';
import type { OutlierSuggestion } from '../../readings/quality/index.ts';
import type { Reading } from '../../readings/reading.ts';
import type { JudgedCabin } from '../judge.ts';
import { figure } from '../wording.ts';
import type { InstrumentQuality } from './instrument-quality.ts';
import { instrumentQualities } from './instrument-quality.ts';
import { limitsOfMaster, limitsOfSource } from './quality-limits.ts';
import type { QualityOptions, SpecimenQuality } from './specimen-quality.ts';
import { specimenQuality } from './specimen-quality.ts';

/** How good the measurements of a cabin are for the limits they serve. */
export interface CabinQuality {
  /** Masters first, then specimens in the order of the document. */
  readonly specimens: readonly SpecimenQuality[];
  readonly instruments: readonly InstrumentQuality[];
  /** What a person should look at: warnings first. Nothing is changed or left out because of them. */
  readonly issues: readonly Issue[];
}

/** Measurement quality of every specimen and instrument of a judged cabin. Pure; the same judgement gives the same result. */
export function cabinQuality(judged: JudgedCabin, options: QualityOptions = {}): CabinQuality {
  const { context, bases } = judged;
  const { cabin, rules } = context;
  const stands = [...bases.values()].flatMap(({ colour, gloss, texture }) => [colour, gloss, texture]);
  const standing = new Set(stands.flatMap((stand) => (stand === undefined ? [] : [stand.specimen.id])));
  const masters = (cabin.masters ?? []).map((specimen, index): SpecimenQuality => {
    const material = cabin.parts.map((part) => (part.target?.master === specimen.id ? bases.get(part.id)?.materialClass : undefined)).find((row) => row !== undefined);
    return {
      specimen: specimen.id, kind: specimen.kind, stage: stageOf(specimen), path: `masters[${index}]`, stands: false,
      ...specimenQuality(context, specimen, material, limitsOfMaster(judged, specimen.id), options),
    };
  });
  const parts = cabin.parts.flatMap((part, partIndex) => part.sources.flatMap((source, sourceIndex) => {
    if (source.specimens.length === 0) return [];
    const limits = limitsOfSource(judged, part, source);
    return source.specimens.map((specimen, index): SpecimenQuality => ({
      specimen: specimen.id, kind: specimen.kind, stage: stageOf(specimen), ...(specimen.lot === undefined ? {} : { lot: specimen.lot.id }),
      part: part.id, source: source.id, supplier: source.supplier,
      path: `parts[${partIndex}].sources[${sourceIndex}].specimens[${index}]`, stands: standing.has(specimen.id),
      ...specimenQuality(context, specimen, rules.materialClass(source.material), limits, options),
    }));
  }));
  const specimens = [...masters, ...parts];
  const instruments = instrumentQualities(cabin, context.asOf, specimens);
  return { specimens, instruments, issues: [...instrumentIssues(instruments), ...specimens.flatMap(outlierIssues)] };
}

function instrumentIssues(instruments: readonly InstrumentQuality[]): Issue[] {
  return instruments.flatMap(({ name, exceeds, worst, agreement, calibration, specimens }, index): Issue[] => {
    const path = `instruments[${index}]`;
    const found: Issue[] = [];
    if (exceeds && worst !== undefined) {
      const { gauge, quantity, specimen } = worst;
      found.push({
        code: 'agreement-large', severity: 'warning', path,
        found: `${name}: ${figure(gauge.instrument)} of a limit of ${figure(gauge.limit)} for ${quantity} of ${specimen}${gauge.instrumentAssumed ? ', assumed' : ''}`,
        expected: 'a standard deviation of its agreement of at most a quarter of the limit',
        hint: gauge.instrumentAssumed ? 'Measure a shared set of tiles on it and on the other instruments.' : 'Measure both sides of its joints on one instrument.',
      });
    }
    if (agreement.state === 'measured before the last calibration') {
      found.push({
        code: 'agreement-before-calibration', severity: 'warning', path, found: `${name}: agreement of ${agreement.on ?? ''}, calibrated on ${calibration.on ?? ''}`,
        expected: 'tiles measured after the last calibration', hint: 'Measure the shared tiles again: the calibration may have moved the instrument.',
      });
    }
    if (agreement.state === 'assumed' && specimens > 0) {
      found.push({
        code: 'agreement-assumed', severity: 'note', path, found: `${name}: no agreement set`, expected: 'its agreement with the others from shared tiles',
        hint: 'The rule book\'s assumption is used for it.',
      });
    }
    return found;
  }).sort((first, second) => Number(first.severity === 'note') - Number(second.severity === 'note'));
}

/** One issue for a spot and a quantity, however many of its rotations stand out: the one that lies farthest. */
function outlierIssues(specimen: SpecimenQuality): Issue[] {
  const spots = new Map<string, Issue>();
  const outliers = [...specimen.colour, ...specimen.gloss, ...specimen.texture].flatMap<OutlierSuggestion & { readonly reading: Reading }>((group) => group.outliers);
  for (const { reading, axisName, value, median, score } of outliers) {
    const key = JSON.stringify([reading.spot.name, reading.conditions, axisName]);
    if (spots.has(key)) continue;
    spots.set(key, {
      code: 'outlier-suggested', severity: 'note', path: specimen.path,
      found: `spot ${reading.spot.name}${reading.rotationDeg === undefined ? '' : ` at ${reading.rotationDeg}°`}: ${axisName} ${figure(value)}`,
      expected: `about ${figure(median)} like the other readings`,
      hint: `It lies ${figure(score, 1)} standard deviations out. Look at the spot; it counts until it is marked.`,
    });
  }
  return [...spots.values()];
}
