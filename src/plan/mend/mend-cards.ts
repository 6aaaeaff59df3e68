import type { Cabin } from '../../cabin/cabin.ts';
import { differenceWords } from '../../colour/difference-words.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import { referenceLab } from '../../harmony/joint-variables.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Lab } from '../../quantities.ts';
import type { MendGroup } from './mend-items.ts';
import type { Shift } from './mend-problem.ts';
import { impliedChange } from './shifted-cabin.ts';

/** What is asked of one part. */
export interface PartChange {
  readonly part: string;
  readonly dL: number;
  readonly da: number;
  readonly db: number;
  readonly dGloss: number;
}

/** A target for the supplier of one part, or of parts that change together. */
export interface MendCard {
  readonly parts: readonly string[];
  readonly supplier: string;
  readonly source: string;
  readonly shift: PartChange;
  /** CIELAB under D65 now and as asked. */
  readonly from?: Lab;
  readonly to?: Lab;
  readonly gloss?: { readonly angle: number; readonly from: number; readonly to: number };
  /** The gloss asked for takes another grain or etching of the tool. */
  readonly toolChange: boolean;
  /** Reflectance now and with the smoothest change that gives the shift. */
  readonly spectrum?: { readonly startNm: number; readonly stepNm: number; readonly from: readonly number[]; readonly to: readonly number[] };
  /** Joints at the part that do not hold now, and do once all cards are met. */
  readonly joints: readonly string[];
  /** Observer and light of the numbers, and the rule book and lights that the joints are judged by. */
  readonly basis: string;
  readonly sentences: readonly string[];
}

const signed = (value: number, decimals: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(decimals)}`;

/** The card of a group in plain words. */
export function mendCard(
  cabin: Cabin, context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, group: MendGroup, shift: Shift, mended: ReadonlySet<string>,
): MendCard {
  const basis = bases.get(group.parts[0])!;
  const names = group.parts.map((part) => context.names.get(part) ?? part).join(' and ');
  const supplier = context.index.suppliers.get(basis.source.supplier)?.name ?? basis.source.supplier;
  const [dL, da, db, dGloss] = shift;
  const from = referenceLab(context, basis);
  const to: Lab | undefined = from === undefined ? undefined : [from[0] + dL, from[1] + da, from[2] + db];
  const sample = basis.gloss?.samples.find((each) => each.angle === 60) ?? basis.gloss?.samples[0];
  const light = context.light('D65');
  const change = light === undefined ? undefined : impliedChange({ ...group.specimens, shift }, light, context.book.observer);
  const now = group.specimens.spectrum;
  const joints = cabin.joints.filter((joint) => mended.has(joint.id) && joint.parts.some((part) => group.parts.includes(part))).map(({ id }) => id);
  const lights = context.book.lights.filter(({ standing }) => standing === 'required').map((each) => each.light);
  const judgedBy = `CIELAB for the ${context.book.observer}° observer under D65; joints judged by the rule book ${context.book.name} under ${lights.length < 2 ? lights.join('') : `${lights.slice(0, -1).join(', ')} and ${lights[lights.length - 1]}`}`;
  const coloured = dL !== 0 || da !== 0 || db !== 0;
  const words = from === undefined || to === undefined ? [] : differenceWords(from, to, 0.05);
  return {
    parts: group.parts, supplier: basis.source.supplier, source: basis.source.id, joints,
    shift: { part: group.parts[0], dL, da, db, dGloss },
    ...(from === undefined || to === undefined ? {} : { from, to }),
    ...(sample === undefined ? {} : { gloss: { angle: sample.angle, from: sample.mean, to: Math.max(0, sample.mean + dGloss) } }),
    toolChange: group.tool && dGloss !== 0, basis: judgedBy,
    ...(now === undefined || change === undefined || !coloured ? {} : {
      spectrum: { startNm: now.startNm, stepNm: now.stepNm, from: Array.from(now.values), to: Array.from(now.values, (value, index) => Math.max(0, value + change[index])) },
    }),
    sentences: [
      coloured
        ? `${supplier}: make ${names} ${words.length === 0 ? 'a little different' : words.join(', ')}: dL* ${signed(dL, 2)}, da* ${signed(da, 2)}, db* ${signed(db, 2)} under D65${to === undefined ? '' : `, to L* ${to[0].toFixed(2)}, a* ${to[1].toFixed(2)}, b* ${to[2].toFixed(2)}`}.`
        : `${supplier}: leave the colour of ${names} as it is.`,
      ...(dGloss === 0 || sample === undefined ? [] : [`${dGloss < 0 ? 'Less' : 'More'} gloss: ${signed(dGloss, 2)} GU at ${sample.angle}°, to ${Math.max(0, sample.mean + dGloss).toFixed(2)} GU.`]),
      ...(group.tool && dGloss !== 0 ? ['The grain sets this gloss: it takes a change of the tool, in steps, not a setting of the process.'] : []),
      ...(joints.length === 0 ? [] : [`It mends ${joints.length === 1 ? 'the joint' : 'the joints'} ${joints.join(', ')}, once all cards are met.`]),
      'This is a target, not a forecast of a recipe: what the change of pigment or finish does under other lights is to be measured on a new plaque.',
    ],
  };
}
