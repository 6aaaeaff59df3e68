import type { Cabin } from '../cabin/cabin.ts';
import type { PublishedCheck } from '../colour/index.ts';
import type { Ageing, CabinComparison } from '../harmony/compare/index.ts';
import type { CheckResult, JointResult, Judgement, MeasurementRequest, PartResult } from '../harmony/judgement.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { InputFile, ReportJoint, ReportModel, ReportPart } from './model/report-model.ts';
import type { CabinSeries } from '../series/index.ts';
import { counts, worstCheck } from '../harmony/judge-joint.ts';
import { cautions } from './cautions.ts';
import type { ComparedPart } from './model/compared-sources.ts';
import type { ProposedChange } from './model/proposed-changes.ts';
import { reportDecisions } from './model/decisions.ts';
import { nextSteps } from './model/next-steps.ts';
import { lightOf, sampleUnder } from './sample.ts';
import { software } from './software.ts';
import { worstFirst } from './worst-first.ts';

export interface ReportInput {
  readonly cabin: Cabin;
  readonly ruleBook: RuleBook;
  readonly judgement: Judgement;
  /** Files that were read: the cabin, a rule book of its own. Files that the cabin itself names are added. */
  readonly files: readonly InputFile[];
  readonly validation: readonly PublishedCheck[];
  /** What it is compared with, the report's own cabin being `after`. */
  readonly comparison?: CabinComparison;
  readonly ageing?: readonly Ageing[];
  readonly sources?: readonly ComparedPart[];
  readonly proposals?: readonly ProposedChange[];
  readonly series?: CabinSeries;
}

/** All that a report says, as plain data: the HTML, the JSON and the CSV are written from this alone. No clock, no place of a machine. */
export function reportModel(input: ReportInput): ReportModel {
  const { cabin, judgement, ruleBook } = input;
  const results = new Map(judgement.joints.map((joint) => [joint.id, joint]));
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const joints = new Map(cabin.joints.map((joint) => [joint.id, joint]));
  const requests = new Map<string | undefined, MeasurementRequest[]>();
  for (const request of judgement.requests) requests.set(request.joint, [...(requests.get(request.joint) ?? []), request]);
  const ordered = worstFirst(judgement.joints).flatMap((result): ReportJoint[] => {
    const joint = joints.get(result.id);
    return joint === undefined ? [] : [{
      id: result.id, joint, result,
      names: [names.get(result.standard) ?? result.standard, names.get(result.trial) ?? result.trial],
      leading: leadingCheck(result),
      requests: requests.get(result.id) ?? [],
    }];
  });
  const parts = reportParts(cabin, judgement);
  const decisions = reportDecisions(cabin, results, judgement.asOf);
  const { sources = [], proposals = [] } = input;
  return {
    format: 'adjoin-report', version: 1, software,
    cabin: {
      id: cabin.id, name: cabin.name, trimLevel: cabin.trimLevel, colourway: cabin.colourway, phase: cabin.phase,
      revision: cabin.revision, note: cabin.note, zones: cabin.zones.map(({ id, name }) => ({ id, name })),
    },
    stage: judgement.stage, asOf: judgement.asOf, decisionRule: judgement.decisionRule,
    observer: judgement.observer, lights: judgement.lights,
    summary: { ...judgement.summary, joints: judgement.joints.length, parts: cabin.parts.length },
    joints: ordered,
    nextSteps: nextSteps(ordered, { parts, sources, proposals, decisions }),
    parts,
    runs: [...judgement.runs].sort((first, second) => runRank[second.verdict] - runRank[first.verdict] || (second.limitUse ?? 0) - (first.limitUse ?? 0)),
    requests: judgement.requests,
    decisions,
    booth: ordered.flatMap(({ id, joint, result }) => {
      const latest = [...(joint.visualRecords ?? [])].sort((first, second) => first.date.localeCompare(second.date)).at(-1);
      return latest === undefined ? [] : [{ joint: id, record: latest, verdict: result.verdict, agrees: result.visual?.agrees ?? false }];
    }),
    ...(input.comparison === undefined ? {} : { comparison: input.comparison }),
    ageing: input.ageing ?? [], sources, proposals,
    ...(input.series === undefined ? {} : { series: input.series }),
    ruleBook,
    instruments: cabin.instruments,
    files: [...input.files, ...(cabin.files ?? []).map((file) => ({ role: 'readings' as const, name: file.name, sha256: file.sha256 }))],
    validation: { checked: input.validation.length, ok: input.validation.filter((row) => row.ok).length, results: input.validation },
    issues: judgement.issues,
    cautions,
  };
}

const runRank = { clashes: 2, open: 1, holds: 0 } as const;

/** The check that a joint's verdict rests on; undefined where nothing of it is judged. */
export const leadingCheck = (result: JointResult): CheckResult | undefined => worstCheck(result.checks.filter(counts));

function reportParts(cabin: Cabin, judgement: Judgement): ReportPart[] {
  const results = new Map<string, PartResult>(judgement.parts.map((part) => [part.id, part]));
  const suppliers = new Map(cabin.suppliers.map((supplier) => [supplier.id, supplier.name]));
  const daylight = lightOf(cabin, 'D65');
  return cabin.parts.flatMap((part) => {
    const result = results.get(part.id);
    const source = part.sources.find((candidate) => candidate.id === (result?.appearance.source ?? part.source)) ?? part.sources[0];
    return source === undefined ? [] : [{
      id: part.id, name: part.name, zone: part.zone, material: source.material, surface: source.surface, grain: source.grain?.id,
      supplier: suppliers.get(source.supplier) ?? source.supplier, source: source.id,
      checks: result?.checks ?? [],
      appearance: result?.appearance,
      sample: result && daylight && sampleUnder(result.appearance, daylight, judgement.observer),
    }];
  });
}
