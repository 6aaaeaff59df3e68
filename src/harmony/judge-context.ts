import { lightByName, userLight } from '../colour/lights.ts';
import type { Light } from '../colour/lights.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import type { CabinIndex } from '../cabin/cabin-index.ts';
import type { Lab } from '../quantities.ts';
import { colourSample } from '../readings/colour-sample.ts';
import type { ColourSample, JudgedLight, MasterLab } from '../readings/colour-sample.ts';
import { labCarrier } from '../readings/lab-carrier.ts';
import type { LabCarrier } from '../readings/lab-carrier.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { ObserverDegrees } from '../readings/reading.ts';
import type { CompiledRuleBook } from '../rules/compile-rule-book.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import { partNames } from './names.ts';

/** What was computed of readings; it may serve the next document where the readings and all they rest on are the same. */
export interface ReadingMemory {
  readonly samples: WeakMap<ReadingGroup, Map<string, ColourSample | undefined>>;
  readonly carriers: WeakMap<ColourSample, LabCarrier>;
  /** Covariance of one spot of a sample, by what is assumed for its material. */
  readonly spreads: WeakMap<ColourSample, Map<string, Float64Array>>;
  readonly masters: Map<string, readonly ReadingGroup[]>;
  /** CIELAB under D65 of what a part is judged on in colour. */
  readonly references: WeakMap<object, Lab | undefined>;
}

/** What every step of judging one cabin by one book has at hand; samples are computed once. */
export interface JudgeContext {
  readonly cabin: Cabin;
  readonly index: CabinIndex;
  readonly rules: CompiledRuleBook;
  readonly book: RuleBook;
  readonly stage: string;
  readonly asOf: string;
  readonly names: ReadonlyMap<string, string>;
  /** A light of the one list or of the cabin. */
  readonly light: (name: string) => Light | undefined;
  readonly sample: (group: ReadingGroup, lights: readonly JudgedLight[]) => ColourSample | undefined;
  readonly carrier: (sample: ColourSample) => LabCarrier;
  /** Absolute CIELAB of a master under a light, for readings that are differences to it. */
  readonly masterLab: MasterLab;
  readonly groupsOfMaster: (master: string) => readonly ReadingGroup[];
  readonly memory: ReadingMemory;
}

const emptyMemory = (): ReadingMemory => ({ samples: new WeakMap(), carriers: new WeakMap(), spreads: new WeakMap(), masters: new Map(), references: new WeakMap() });

/** `names` are those of the same parts by the same names, where they were made before. */
export function judgeContext(
  cabin: Cabin, rules: CompiledRuleBook, stage: string, asOf: string, memory: ReadingMemory = emptyMemory(), names: ReadonlyMap<string, string> = partNames(cabin.parts),
): JudgeContext {
  const index = cabinIndex(cabin);
  const own = new Map((cabin.lights ?? []).map((light) => [light.id, userLight(light.id, light.startNm, light.stepNm, light.values)]));
  const light = (name: string): Light | undefined => lightByName(name) ?? own.get(name);
  const { samples, carriers, masters } = memory;

  const groupsOfMaster = (master: string): readonly ReadingGroup[] => {
    const known = masters.get(master);
    if (known !== undefined) return known;
    const made = groupColourReadings(index.masters.get(master)?.readings ?? [], index.conditions).groups;
    masters.set(master, made);
    return made;
  };
  const masterLab: MasterLab = (master, name, observer: ObserverDegrees): Lab | undefined => {
    const asked = light(name);
    if (asked === undefined) return undefined;
    const judged: JudgedLight = { name, light: asked, observer };
    for (const group of groupsOfMaster(master)) {
      const mean = colourSample(group, [judged])?.means[0];
      if (mean !== undefined) return mean;
    }
    return undefined;
  };
  const sample = (group: ReadingGroup, lights: readonly JudgedLight[]): ColourSample | undefined => {
    const key = lights.map(({ name, observer }) => `${name}/${observer}`).join(' ');
    const known = samples.get(group) ?? new Map<string, ColourSample | undefined>();
    samples.set(group, known);
    if (!known.has(key)) known.set(key, colourSample(group, lights, masterLab));
    return known.get(key);
  };
  const carrier = (of: ColourSample): LabCarrier => {
    const known = carriers.get(of) ?? labCarrier(of);
    carriers.set(of, known);
    return known;
  };
  return {
    cabin, index, rules, book: rules.book, stage, asOf, names, light, sample, carrier, masterLab, groupsOfMaster, memory,
  };
}
