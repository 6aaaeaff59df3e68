import type { Joint } from '../../cabin/cabin.ts';
import type { PartAppearance } from '../../harmony/judgement.ts';
import type { JudgedCabin } from '../../harmony/judge.ts';
import type { PairVerdict } from '../../harmony/pair-verdict.ts';
import { sourceOf } from '../../cabin/source-of.ts';
import { partAppearance } from '../../harmony/appearance.ts';
import { lightOf, sampleUnder } from '../sample.ts';
import { piecePriceAt } from '../../plan/model/source-cost.ts';
import type { Sample } from '../sample.ts';
import { pairJudge } from '../../plan/model/pair-judge.ts';

/** One source of a part that has several: what it looks like, what it costs, and the joints of the part if it were taken, all else as it is. */
export interface ComparedSource {
  readonly source: string;
  readonly supplier: string;
  readonly status: string;
  /** The part stands by it. */
  readonly chosen: boolean;
  readonly appearance: PartAppearance;
  /** Colour under D65 and the book's observer. */
  readonly sample?: Sample;
  readonly piecePrice?: number;
  readonly currency?: string;
  readonly leadWeeks?: number;
  /** Clashes without a decision, open joints and holding ones, of all the joints of the part. */
  readonly clashes: number;
  readonly accepted: number;
  readonly open: number;
  readonly holds: number;
  readonly worstUse?: number;
  /** Expected number of its joints that do not hold: the sum of what is wanting to certainty. */
  readonly expectedWrong: number;
}

/** A part of which a choice was made. */
export interface ComparedPart {
  readonly part: string;
  readonly name: string;
  readonly joints: number;
  readonly sources: readonly ComparedSource[];
}

/** Every part with more than one source, each of these judged in its place. */
export function comparedSources({ context, judgement }: JudgedCabin): readonly ComparedPart[] {
  const { cabin, book } = context;
  const choices = cabin.parts.filter(({ sources }) => sources.length > 1);
  if (choices.length === 0) return [];
  const daylight = lightOf(cabin, 'D65');
  const judge = pairJudge(cabin, book, { stage: judgement.stage, asOf: judgement.asOf });
  const picked = new Map(cabin.parts.map((part) => [part.id, sourceOf(part).id]));
  const joints = new Map<string, Joint[]>(choices.map(({ id }) => [id, []]));
  for (const joint of cabin.joints) for (const part of joint.parts) joints.get(part)?.push(joint);
  return choices.map((part): ComparedPart => {
    const own = joints.get(part.id) ?? [];
    return {
      part: part.id, name: context.names.get(part.id) ?? part.name, joints: own.length,
      sources: part.sources.map((source): ComparedSource => {
        const { id, supplier, status, currency, leadWeeks } = source;
        const verdicts = own.map((joint) => judge.at(joint, ...(joint.parts.map((other) => (other === part.id ? id : picked.get(other) ?? '')) as [string, string])));
        const count = (holds: (verdict: PairVerdict) => boolean): number => verdicts.filter(holds).length;
        const uses = verdicts.flatMap(({ limitUse }) => (limitUse === undefined ? [] : [limitUse]));
        const appearance = partAppearance(judge.context, judge.basis(part.id, id));
        const sample = daylight && sampleUnder(appearance, daylight, judgement.observer);
        const piecePrice = piecePriceAt(source, cabin.volume ?? 1);
        return {
          source: id, supplier: context.index.suppliers.get(supplier)?.name ?? supplier, status, chosen: id === picked.get(part.id),
          appearance, ...(sample === undefined ? {} : { sample }),
          ...(piecePrice === undefined ? {} : { piecePrice }), ...(currency === undefined ? {} : { currency }), ...(leadWeeks === undefined ? {} : { leadWeeks }),
          clashes: count(({ verdict, accepted }) => verdict === 'clashes' && !accepted), accepted: count(({ verdict, accepted }) => verdict === 'clashes' && accepted),
          open: count(({ verdict }) => verdict === 'open'), holds: count(({ verdict }) => verdict === 'holds'),
          ...(uses.length === 0 ? {} : { worstUse: Math.max(...uses) }),
          expectedWrong: verdicts.reduce((sum, { totalProbability }) => sum + (1 - totalProbability), 0),
        };
      }),
    };
  });
}
