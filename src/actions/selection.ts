import type { Cabin, Part } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { bookOfCabin } from './carried-book.ts';

/**
 * What the user points at, by ids; no part of the document. A deeper choice carries the outer ones: a specimen with its
 * source and part, a reading with its specimen.
 */
export interface Selection {
  /** Parts in the order they were picked; the last one leads. */
  readonly parts?: readonly string[];
  readonly source?: string;
  readonly specimen?: string;
  /** Places of readings in the specimen's list. */
  readonly readings?: readonly number[];
  /** Place of a point in the outline of the leading part. */
  readonly point?: number;
  readonly joint?: string;
  readonly decision?: string;
  readonly proposal?: string;
  /** Place of a visual record in the joint's list. */
  readonly record?: number;
  readonly run?: string;
  readonly zone?: string;
  readonly cap?: string;
  readonly light?: string;
  readonly supplier?: string;
  readonly instrument?: string;
  readonly conditions?: string;
  /** A rule, or a material, of the cabin's rule book. */
  readonly rule?: string;
  readonly material?: string;
}

/** What an action needs to be selected. */
export const contexts = [
  'none', 'part', 'two parts', 'point', 'source', 'specimen', 'readings', 'joint', 'decision', 'proposal', 'visual record', 'run', 'zone', 'cap', 'light',
  'supplier', 'instrument', 'conditions', 'rule', 'material',
] as const;
export type Context = (typeof contexts)[number];

export const leadingPart = (selection: Selection): string | undefined => selection.parts?.at(-1);

const picked: Readonly<Record<Exclude<Context, 'none'>, (selection: Selection) => boolean>> = {
  part: (selection) => leadingPart(selection) !== undefined,
  'two parts': (selection) => selection.parts?.length === 2,
  point: (selection) => leadingPart(selection) !== undefined && selection.point !== undefined,
  source: (selection) => leadingPart(selection) !== undefined && selection.source !== undefined,
  specimen: (selection) => selection.specimen !== undefined,
  readings: (selection) => selection.specimen !== undefined && (selection.readings?.length ?? 0) > 0,
  joint: (selection) => selection.joint !== undefined,
  decision: (selection) => selection.decision !== undefined,
  proposal: (selection) => selection.proposal !== undefined,
  'visual record': (selection) => selection.joint !== undefined && selection.record !== undefined,
  run: (selection) => selection.run !== undefined,
  zone: (selection) => selection.zone !== undefined,
  cap: (selection) => selection.cap !== undefined,
  light: (selection) => selection.light !== undefined,
  supplier: (selection) => selection.supplier !== undefined,
  instrument: (selection) => selection.instrument !== undefined,
  conditions: (selection) => selection.conditions !== undefined,
  rule: (selection) => selection.rule !== undefined,
  material: (selection) => selection.material !== undefined,
};

const asked: Readonly<Record<Exclude<Context, 'none'>, string>> = {
  part: 'a part', 'two parts': 'two parts', point: 'a point of an outline', source: 'a source', specimen: 'a specimen', readings: 'one or more readings',
  joint: 'a joint', decision: 'a decision', proposal: 'a proposal', 'visual record': 'a visual record', run: 'a run', zone: 'a zone', cap: 'a cap', light: 'a light of the cabin',
  supplier: 'a supplier', instrument: 'an instrument', conditions: 'conditions of readings',
  rule: 'a rule of the rule book', material: 'a material of the rule book',
};

/** `true` where the selection has what the context asks for, else what to select first. */
export const contextMet = (context: Context, selection: Selection): true | string =>
  (context === 'none' || picked[context](selection) ? true : `Select ${asked[context]} first.`);

const listed = (list: readonly { readonly id: string }[] | undefined, id: string | undefined): boolean => list?.some((item) => item.id === id) ?? false;

/** Whether the cabin has what is selected; asked only for what is selected, since some of it is looked for in all joints. */
const stays: Readonly<Record<Exclude<keyof Selection, 'parts' | 'readings'>, (cabin: Cabin, selection: Selection, lead: Part | undefined) => boolean>> = {
  source: (_, { source }, lead) => listed(lead?.sources, source),
  specimen: (cabin, { specimen = '' }) => cabinIndex(cabin).specimens.has(specimen),
  point: (_, { point = 0 }, lead) => point < (lead?.outline?.length ?? 0),
  joint: (cabin, { joint = '' }) => cabinIndex(cabin).joints.has(joint),
  decision: (cabin, { decision }) => cabin.joints.some(({ decisions }) => listed(decisions, decision)),
  proposal: (cabin, { proposal }) => cabin.joints.some(({ proposals }) => listed(proposals, proposal)),
  record: (cabin, { joint = '', record = 0 }) => record < (cabinIndex(cabin).joints.get(joint)?.visualRecords?.length ?? 0),
  run: (cabin, { run }) => listed(cabin.runs, run),
  zone: (cabin, { zone = '' }) => cabinIndex(cabin).zones.has(zone),
  cap: (cabin, { cap }) => cabin.zones.some(({ caps }) => listed(caps, cap)),
  light: (cabin, { light }) => listed(cabin.lights, light),
  supplier: (cabin, { supplier = '' }) => cabinIndex(cabin).suppliers.has(supplier),
  instrument: (cabin, { instrument = '' }) => cabinIndex(cabin).instruments.has(instrument),
  conditions: (cabin, { conditions = '' }) => cabinIndex(cabin).conditions.has(conditions),
  rule: (cabin, { rule }) => listed(bookOfCabin(cabin)?.rules, rule),
  material: (cabin, { material: wanted }) => bookOfCabin(cabin)?.materials.some(({ material }) => material === wanted) ?? false,
};

/** The selection without what the cabin does not have (any more). */
export function withinCabin(cabin: Cabin, selection: Selection): Selection {
  const index = cabinIndex(cabin);
  const parts = selection.parts?.filter((id) => index.parts.has(id));
  const lead = parts?.at(-1) === undefined ? undefined : index.parts.get(parts.at(-1)!);
  const readings = selection.readings?.filter((at) => at < (index.specimens.get(selection.specimen ?? '')?.specimen.readings.length ?? 0));
  const kept = (Object.keys(stays) as (keyof typeof stays)[]).filter((key) => selection[key] !== undefined && stays[key](cabin, selection, lead));
  return {
    ...(parts === undefined || parts.length === 0 ? {} : { parts }),
    ...(readings === undefined || readings.length === 0 ? {} : { readings }),
    ...Object.fromEntries(kept.map((key) => [key, selection[key]])),
  };
}
