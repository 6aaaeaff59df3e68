import { tileSetDate, tileSetStudy } from '../cabin/tile-set-agreement.ts';
import type { JudgedCabin } from '../harmony/index.ts';
import { jointVariables } from '../harmony/joint-variables.ts';
import { ruleSide } from '../harmony/judge-joint.ts';
import type { MasterOverview } from '../harmony/master-overview.ts';
import type { CabinQuality } from '../harmony/quality/index.ts';
import type { AgreementStudy } from '../readings/agreement/index.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import { specularCue } from '../readings/specular-cue.ts';
import type { SpecularCue } from '../readings/specular-cue.ts';
import type { RequestSheet } from '../report/requests/index.ts';
import type { ResolvedRule, ResolvingVariables, RuleSide } from '../rules/rule-book.ts';

/** How good the readings of a cabin are. */
export interface QualityLook {
  readonly quality: CabinQuality;
  /** Gloss as a sphere saw it, of specimens that one read with and without the mirror reflection. */
  readonly cues: readonly { readonly specimen: string; readonly cue: SpecularCue }[];
  /** What each set of shared tiles says of the instruments. */
  readonly studies: readonly { readonly id: string; readonly name: string; readonly date: string; readonly study: AgreementStudy }[];
}

/** The rule that holds for one joint, all its formulas evaluated, and what they were evaluated for; a variable is NaN where the data does not say. */
export interface JointRuleLook {
  readonly rule: ResolvedRule;
  readonly variables: ResolvingVariables;
  readonly sides: readonly [RuleSide, RuleSide];
}

/** What can be looked at of the judged cabin beyond its judgement, by what it gives. */
export interface Looks {
  readonly quality: QualityLook;
  readonly masters: MasterOverview;
  readonly requests: readonly RequestSheet[];
  /** Undefined where there is no such joint. */
  readonly 'joint rule': JointRuleLook | undefined;
  /** A file for suppliers as text; undefined where there is nothing to write. */
  readonly 'requests file': string | undefined;
  readonly 'master file': string | undefined;
}

export type LookName = keyof Looks;

/** `supplier`: only what concerns one; all where absent. */
export type Look =
  | { readonly what: 'quality' | 'masters' | 'requests' }
  | { readonly what: 'joint rule'; readonly joint: string }
  | { readonly what: 'requests file'; readonly ending: 'html' | 'csv'; readonly supplier?: string }
  | { readonly what: 'master file'; readonly ending: 'html' | 'cxf' | 'csv'; readonly master: string; readonly supplier?: string };

/** Looks at a judged cabin. What only some of the looks need is loaded with the first of them. */
export async function lookAt(judged: JudgedCabin, look: Look): Promise<Looks[LookName]> {
  const { cabin, book, index, sample } = judged.context;
  switch (look.what) {
    case 'quality': {
      const { cabinQuality } = await import('../harmony/quality/index.ts');
      return {
        quality: cabinQuality(judged),
        cues: [...index.specimens.values()].flatMap(({ specimen }) => {
          const cue = specularCue(groupColourReadings(specimen.readings, index.conditions).groups, sample);
          return cue === undefined ? [] : [{ specimen: specimen.id, cue }];
        }),
        studies: (cabin.tileSets ?? []).map((set) => ({ id: set.id, name: set.name, date: tileSetDate(cabin, set), study: tileSetStudy(cabin, set) })),
      };
    }
    case 'masters': return (await import('../harmony/master-overview.ts')).masterOverview(judged);
    case 'joint rule': {
      const found = judged.joints.find(({ result }) => result.id === look.joint)?.input;
      if (found === undefined) return undefined;
      const [one, other] = found.sides;
      return { rule: found.rule, variables: jointVariables(judged.context, found.joint, found.sides), sides: [ruleSide(one), ruleSide(other)] };
    }
    case 'requests': return (await import('../report/requests/index.ts')).requestSheets(cabin, judged.judgement, book);
    case 'requests file': {
      const { requestCsv, requestHtml, requestSheets } = await import('../report/requests/index.ts');
      const sheets = requestSheets(cabin, judged.judgement, book).filter(({ supplier }) => look.supplier === undefined || supplier.id === look.supplier);
      return sheets.length === 0 ? undefined : look.ending === 'csv' ? requestCsv(sheets) : requestHtml(sheets);
    }
    case 'master file': {
      if (look.ending === 'html') return (await import('../report/masters/index.ts')).masterSheetHtml(judged, look.master, look.supplier);
      const [{ masterReadings }, { writers }] = await Promise.all([import('../formats/master-readings.ts'), import('../formats/writers.ts')]);
      const set = masterReadings(cabin, look.master);
      return set && writers.find(({ extension }) => extension === `.${look.ending}`)?.write(set, { created: judged.context.asOf }).value;
    }
  }
}
