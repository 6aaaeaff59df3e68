import type { Part, Specimen } from '../cabin/cabin.ts';
import { dayCount } from '../cabin/day-count.ts';
import type { Lab } from '../quantities.ts';
import { glossSamples } from '../readings/gloss-sample.ts';
import type { ArealParameters, GeometryClass, GlossAngle, ObserverDegrees } from '../readings/reading.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import { textureSample } from '../readings/texture-sample.ts';
import type { JudgeContext } from './judge-context.ts';
import type { JudgedCabin } from './judge.ts';
import type { CheckResult, JointResult, Verdict } from './judgement.ts';
import type { DriftBasis, MasterDrift } from './master-drift.ts';
import { masterDrifts } from './master-drift.ts';
import { bookFormula } from './quality/quality-limits.ts';
import { percentOfLimit } from './wording.ts';

/** How one neighbour of a part was judged. */
export interface NeighbourVerdict {
  readonly joint: string;
  readonly part: string;
  readonly verdict: Verdict;
  readonly accepted: boolean;
  readonly colour: Pick<CheckResult, 'verdict' | 'limitUse' | 'light'> | undefined;
  readonly gloss: Pick<CheckResult, 'verdict' | 'limitUse'> | undefined;
}

/** A part that is held to a master: against the master and against its neighbours, side by side. */
export interface MasterPart {
  readonly part: string;
  readonly name: string;
  readonly source: string;
  readonly supplier: string;
  readonly colour: CheckResult | undefined;
  readonly gloss: CheckResult | undefined;
  readonly neighbours: readonly NeighbourVerdict[];
  /** Within its master in all that was checked, and a joint of it clashes all the same. */
  readonly withinYetClashing: boolean;
}

/** A recorded master with its state on the day of the judgement. */
export interface MasterEntry {
  readonly master: string;
  readonly name: string;
  readonly issue?: string;
  readonly producedOn?: string;
  /** Days to the date; negative once it has passed. */
  readonly expires?: { readonly on: string; readonly days: number };
  readonly remeasure?: { readonly on: string; readonly days: number };
  readonly lastMeasured?: string;
  readonly state: 'in force' | 'remeasure due' | 'expired' | 'replaced';
  readonly parent?: string;
  /** Masters that name this one as their parent. */
  readonly children: readonly string[];
  readonly lab?: { readonly lab: Lab; readonly light: string; readonly observer: ObserverDegrees };
  readonly spectrum?: { readonly startNm: number; readonly stepNm: number; readonly values: readonly number[] };
  readonly geometry?: GeometryClass;
  readonly spots: number;
  readonly gloss: readonly { readonly angle: GlossAngle; readonly mean: number; readonly spots: number }[];
  readonly texture?: ArealParameters;
  readonly drifts: readonly MasterDrift[];
  readonly parts: readonly MasterPart[];
}

/** Two parts each within its own master whose joint clashes. */
export interface WithinYetClashing {
  readonly joint: string;
  readonly parts: readonly [string, string];
  readonly masters: readonly [string, string];
  readonly check: 'colour' | 'gloss';
  /** Limit uses of the two parts against their masters. */
  readonly masterUses: readonly [number, number];
  readonly jointUse: number;
  readonly accepted: boolean;
  readonly sentence: string;
}

export interface MasterOverview {
  readonly masters: readonly MasterEntry[];
  /** Worst first. */
  readonly withinYetClashing: readonly WithinYetClashing[];
  /** Parts with colour readings of their own that are held to no master. */
  readonly partsWithoutMaster: readonly string[];
}

/** Every recorded master: its dates, its drift, and its parts against it and against their neighbours. Pure. */
export function masterOverview(judged: JudgedCabin): MasterOverview {
  const { context, bases, judgement } = judged;
  const { cabin } = context;
  const results = new Map(judgement.parts.map((part) => [part.id, part.checks]));
  const masters = [...context.index.masters.values()];
  const parts = new Map(cabin.parts.map((part) => [part.id, masterPart(judged, part, results.get(part.id) ?? [])]));
  return {
    masters: masters.map((master) => {
      const held = cabin.parts.filter(({ target }) => target?.master === master.id).flatMap((part) => parts.get(part.id) ?? []);
      return masterEntry(judged, master, masters, held);
    }),
    withinYetClashing: judgement.joints.flatMap((joint) => pairWithin(context, joint, results)).sort((first, second) => second.jointUse - first.jointUse),
    partsWithoutMaster: cabin.parts.filter(({ id, target }) => {
      const colour = bases.get(id)?.colour;
      return target === undefined && colour !== undefined && colour.borrowedFrom === undefined;
    }).map(({ id }) => id),
  };
}

const checkOf = (checks: readonly CheckResult[], subject: 'colour' | 'gloss'): CheckResult | undefined =>
  checks.find((check) => check.check === 'master' && check.subject === subject);

function masterPart(judged: JudgedCabin, part: Part, checks: readonly CheckResult[]): MasterPart {
  const source = judged.bases.get(part.id)?.source;
  const [colour, gloss] = [checkOf(checks, 'colour'), checkOf(checks, 'gloss')];
  const neighbours = judged.judgement.joints.filter(({ parts }) => parts.includes(part.id)).map((joint): NeighbourVerdict => ({
    joint: joint.id, part: joint.parts[joint.parts[0] === part.id ? 1 : 0], verdict: joint.verdict, accepted: joint.accepted,
    colour: joint.checks.find(({ check }) => check === 'colour'), gloss: joint.checks.find(({ check }) => check === 'gloss'),
  }));
  const own = [colour, gloss].filter((check) => check !== undefined && check.verdict !== 'not applicable' && check.verdict !== 'no data');
  return {
    part: part.id, name: judged.context.names.get(part.id) ?? part.name, source: source?.id ?? '', supplier: source?.supplier ?? '',
    colour, gloss, neighbours,
    withinYetClashing: own.length > 0 && own.every((check) => check?.simple === 'holds' && check.verdict !== 'clashes')
      && neighbours.some(({ verdict }) => verdict === 'clashes'),
  };
}

/** The joint's clashing colour or gloss check with both parts inside their masters' limits by value. */
function pairWithin(context: JudgeContext, joint: JointResult, results: ReadonlyMap<string, readonly CheckResult[]>): WithinYetClashing[] {
  return (['colour', 'gloss'] as const).flatMap((name): WithinYetClashing[] => {
    const clash = joint.checks.find(({ check, verdict }) => check === name && verdict === 'clashes');
    const uses = joint.parts.map((part) => checkOf(results.get(part) ?? [], name)).map((check) => (check?.simple === 'holds' ? check.limitUse : undefined));
    const masters = joint.parts.map((part) => context.index.parts.get(part)?.target?.master);
    const [first, second] = uses;
    if (clash?.limitUse === undefined || first === undefined || second === undefined || masters[0] === undefined || masters[1] === undefined) return [];
    const names = joint.parts.map((part) => context.names.get(part) ?? part);
    return [{
      joint: joint.id, parts: joint.parts, masters: [masters[0], masters[1]], check: name,
      masterUses: [first, second], jointUse: clash.limitUse, accepted: clash.accepted === true,
      sentence: `${names[0]} uses ${percentOfLimit(first)} and ${names[1]} ${percentOfLimit(second)} of what `
        + `${masters[0] === masters[1] ? 'their master allows' : 'their masters allow'}, `
        + `and together they use ${percentOfLimit(clash.limitUse)} of the ${name} limit of their joint${clash.light === undefined ? '' : ` under ${clash.light}`}.`,
    }];
  });
}

function masterEntry(judged: JudgedCabin, master: Specimen, all: readonly Specimen[], parts: readonly MasterPart[]): MasterEntry {
  const { context } = judged;
  const { asOf, index, book } = context;
  const groups = context.groupsOfMaster(master.id);
  const rank = ({ geometryClass }: ReadingGroup): number =>
    (book.geometryOrder.includes(geometryClass) ? book.geometryOrder.indexOf(geometryClass) : book.geometryOrder.length);
  const group = [...groups].sort((first, second) => rank(first) - rank(second))[0];
  const light = context.light('D65');
  const sample = group === undefined || light === undefined ? undefined : context.sample(group, [{ name: 'D65', light, observer: book.observer }]);
  const lab = sample?.means[0];
  const spectrum = sample?.spectrum;
  const texture = textureSample(master.readings, index.conditions)?.parameters;
  const days = master.readings.flatMap(({ measuredAt }) => (measuredAt === undefined ? [] : [measuredAt.slice(0, 10)])).sort();
  const children = all.filter(({ parentMaster }) => parentMaster === master.id).map(({ id }) => id);
  const { expires, remeasureOn } = master;
  const used = parts.length > 0;
  return {
    master: master.id, name: master.note ?? master.id,
    ...(master.issue === undefined ? {} : { issue: master.issue }), ...(master.producedOn === undefined ? {} : { producedOn: master.producedOn }),
    ...(expires === undefined ? {} : { expires: { on: expires, days: dayCount(asOf, expires) } }),
    ...(remeasureOn === undefined ? {} : { remeasure: { on: remeasureOn, days: dayCount(asOf, remeasureOn) } }),
    ...(days.length === 0 ? {} : { lastMeasured: days[days.length - 1] }),
    state: expires !== undefined && expires < asOf ? 'expired' : children.length > 0 && !used ? 'replaced'
      : remeasureOn !== undefined && remeasureOn < asOf ? 'remeasure due' : 'in force',
    ...(master.parentMaster === undefined ? {} : { parent: master.parentMaster }), children,
    ...(lab === undefined ? {} : { lab: { lab, light: 'D65', observer: book.observer } }),
    ...(spectrum === undefined ? {} : { spectrum: { startNm: spectrum.startNm, stepNm: spectrum.stepNm, values: Array.from(spectrum.values) } }),
    ...(group === undefined ? {} : { geometry: group.geometryClass }), spots: sample?.spots ?? 0,
    gloss: glossSamples(master.readings, index.conditions).map(({ angle, mean, spots }) => ({ angle, mean, spots })),
    ...(texture === undefined ? {} : { texture }),
    drifts: masterDrifts(context, master, driftBasis(judged, parts)),
    parts,
  };
}

/** The formula and the strictest limit that the parts of a master are held to it by. */
function driftBasis({ context, bases }: JudgedCabin, parts: readonly MasterPart[]): DriftBasis {
  const row = parts.map(({ part }) => bases.get(part)?.materialClass).find((found) => found !== undefined);
  const limits = parts.flatMap(({ colour }) => (colour?.limit === undefined ? [] : [colour.lights.find(({ light }) => light === 'D65')?.limit ?? colour.limit]));
  return { formula: bookFormula(context.book, row?.kL ?? 1), limit: limits.length === 0 ? undefined : Math.min(...limits) };
}
