import type { ReportInput } from './model.ts';
import type { ReportJoint, ReportModel, ReportPart } from './model/report-model.ts';
import type { Sample } from './sample.ts';
import { lightOf, sampleUnder } from './sample.ts';

/** What the sections of the page draw from. */
export interface Page {
  readonly model: ReportModel;
  readonly input: ReportInput;
  readonly part: (id: string) => ReportPart | undefined;
  /** Place of a joint in the report, from 0. */
  readonly place: (joint: string) => number;
  readonly joint: (id: string) => ReportJoint | undefined;
  /** Colour of a part under a light, computed once. */
  readonly sample: (part: string, light: string) => Sample | undefined;
}

export function pageOf(model: ReportModel, input: ReportInput): Page {
  const parts = new Map(model.parts.map((part) => [part.id, part]));
  const places = new Map(model.joints.map((joint, index) => [joint.id, index]));
  const samples = new Map<string, Sample | undefined>();
  return {
    model, input,
    part: (id) => parts.get(id),
    place: (joint) => places.get(joint) ?? -1,
    joint: (id) => model.joints[places.get(id) ?? -1],
    sample: (id, name) => {
      const key = JSON.stringify([id, name]);
      if (!samples.has(key)) {
        const light = lightOf(input.cabin, name);
        const appearance = parts.get(id)?.appearance;
        samples.set(key, light && appearance && sampleUnder(appearance, light, input.judgement.observer));
      }
      return samples.get(key);
    },
  };
}
