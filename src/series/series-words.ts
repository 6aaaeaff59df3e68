import type { JudgeContext } from '../harmony/judge-context.ts';
import { figure, listed, percentOfLimit } from '../harmony/wording.ts';
import type { BuildPlan } from './build/build-together.ts';
import type { ForecastPlace, JointForecast } from './forecast/joint-forecast.ts';
import type { PartSeries, TrendTold } from './part-series.ts';
import type { CabinSeries } from './series-cabin.ts';

/** Days that a slope is told by, so that it is a number one can think of. */
export const toldDays = 30;

const axes = [['lighter', 'darker'], ['redder', 'greener'], ['yellower', 'bluer']] as const;
const symbols = ['L*', 'a*', 'b*'] as const;

/** A probability that says how little, and never none. */
const small = (probability: number): string => (probability < 0.001 ? 'under 0.1 %' : `${figure(100 * probability, 1)} %`);

/** A slope by 30 days, or by a lot. */
export const slopeScale = (unit: 'day' | 'lot'): { readonly factor: number; readonly per: string } =>
  (unit === 'day' ? { factor: toldDays, per: `in ${toldDays} days` } : { factor: 1, per: 'from lot to lot' });

const signed = (value: number): string => `${value > 0 ? '+' : value < 0 ? '−' : ''}${figure(Math.abs(value))}`;

/** What the lots of a part did, in whole sentences. */
export function partWords(series: PartSeries): readonly string[] {
  const { lots, unit, trend, chart, gloss, borrowedFrom, leftOut } = series;
  const days = lots[0].producedOn === undefined ? '' : ` from ${lots[0].producedOn} to ${lots.at(-1)?.producedOn ?? ''}`;
  const { factor, per } = slopeScale(unit);
  return [
    `${lots.length} lots${days}${borrowedFrom === undefined ? '' : `, those of its other hand, ${borrowedFrom}`}${leftOut.length === 0 ? '' : `; ${listed(leftOut)} read under other conditions and left out`}.`,
    trendWords(trend, unit, lots.length, (slope, reach) => {
      const told = slope.flatMap((entry, axis) => (Math.abs(entry) > reach[axis] ? [`${axes[axis][entry > 0 ? 0 : 1]} by ${figure(Math.abs(entry) * factor)} ± ${figure(reach[axis] * factor)} ${symbols[axis]}`] : []));
      return told.length === 0 ? `It changes ${per} by ${slope.map((entry, axis) => `${signed(entry * factor)} ${symbols[axis]}`).join(', ')}, taken together` : `It becomes ${listed(told)} ${per}`;
    }, 'colour'),
    ...(gloss === undefined || gloss.state === 'too few lots' ? [] : [trendWords(gloss, unit, gloss.lots.length, ([slope], [reach]) => `Its gloss at ${gloss.angle}° changes by ${signed(slope * factor)} ± ${figure(reach * factor)} GU ${per}`, `gloss at ${gloss.angle}°`)]),
    chartWords(series),
    ...(chart.reference === 'lots' && chart.reason === undefined && trend.state === 'trend' && chart.base === lots.length ? ['Its limits hold the trend as scatter: take them from the first lots to see the drift on the chart.'] : []),
  ];
}

function trendWords(trend: TrendTold, unit: 'day' | 'lot', lots: number, say: (slope: readonly number[], reach: readonly number[]) => string, what: string): string {
  if (trend.state === 'too few lots') return `No trend of its ${what} is claimed: ${lots} lots are too few, it takes ${trend.wanted} at least.`;
  if (trend.slope === undefined || trend.reach === undefined || trend.probability === undefined) return `No trend of its ${what} is claimed: its lots are of one ${unit === 'day' ? 'day' : 'place'}.`;
  if (trend.state === 'no trend') return `No trend of its ${what}: so large a slope comes by chance with a probability of ${small(trend.probability)}.`;
  return `${say(trend.slope, trend.reach)}; by chance so large a slope has a probability of ${small(trend.probability)}.`;
}

function chartWords({ lots, chart }: PartSeries): string {
  if (chart.reason !== undefined) return `There is no chart: ${chart.reason}.`;
  const against = chart.reference === 'master' ? `master ${chart.master ?? ''}, by what readings and instruments leave uncertain and not by any tolerance`
    : chart.base === lots.length ? 'each other' : `the first ${chart.base}`;
  const outside = lots.filter(({ charted }) => charted?.outside === true);
  if (outside.length === 0) return `Against ${against}, no lot is outside the limit of T².`;
  return `Against ${against}, ${outside.length === 1 ? 'lot' : 'lots'} ${listed(outside.map(({ id, charted, words }) => `${id}${words.length === 0 ? '' : ` (${words.join(', ')}`}${words.length === 0 ? ' (' : '; '}T² ${figure(charted?.statistic ?? 0, 1)} over ${figure(charted?.limit ?? 0, 1)})`))} ${outside.length === 1 ? 'is' : 'are'} outside.`;
}

/** "on 2026-08-03" or "at the 3rd lot from now". */
export const placeWords = ({ ahead, day }: ForecastPlace): string => (day === undefined ? `${ahead} ${ahead === 1 ? 'lot' : 'lots'} from now` : `on ${day}`);

/** What is to be expected of a joint, in one sentence. */
export function forecastWords(forecast: JointForecast, joint: string, ahead: { readonly days: number; readonly lots: number }): string {
  const { state, unit, now, when, there, earliest, latest, reason, beyondLots, check, angle } = forecast;
  const what = check === 'gloss' ? `the gloss at ${angle ?? ''}°` : 'the colour';
  const under = (use: typeof now): string => (check === 'gloss' ? '' : ` under ${use?.light ?? ''}`);
  const far = unit === 'day' ? `${ahead.days} days` : `${ahead.lots} lots`;
  const uses = now === undefined ? '' : `; by the lines it now uses ${percentOfLimit(now.use)}`;
  switch (state) {
    case 'not judged': return `${joint}: nothing is forecast, ${reason ?? 'it is not judged'}.`;
    case 'too few lots': return `${joint}: no trend is claimed, there are too few lots on both sides.`;
    case 'no trend': return `${joint}: no trend on either side.`;
    case 'over its limit': return `${joint}: by the lines of its lots ${what} is over its limit already, at ${percentOfLimit(now?.use ?? 0)}${under(now)}.`;
    case 'stays within': return `${joint}: if the lots go on as they went ${what} stays within its limit for ${far}${earliest === undefined ? '' : `, though the lines leave room for a clash ${placeWords(earliest)}`}${uses}.`;
    case 'will clash': {
      const range = earliest === undefined ? '' : latest === undefined ? ` (not before ${placeWords(earliest).replace('on ', '')}; the lines leave room for none within ${far})`
        : ` (between ${placeWords(earliest).replace('on ', '')} and ${placeWords(latest).replace('on ', '')})`;
      return `${joint}: if the lots go on as they went ${what} comes over its limit ${when === undefined ? '' : placeWords(when)}${range}${check === 'gloss' ? '' : `,${under(there)}`}${uses}.${beyondLots === true ? ' That is farther ahead than its lots look back.' : ''}`;
    }
  }
}

/** What building the lots together in the best way comes to. */
export function buildWords(plan: BuildPlan, name: (part: string) => string): string {
  const { sets, best, asProduced, proved, boundClashes, method } = plan;
  const count = (clashes: number): string => `${figure(clashes)} ${clashes === 1 ? 'clash' : 'clashes'}`;
  const named = plan.parts.length > 4 ? `${plan.parts.length} parts from ${name(plan.parts[0])} on` : listed(plan.parts.map(name));
  const gains = asProduced.clashes - best.clashes > 5e-6 || asProduced.overUse - best.overUse > 5e-4;
  const sure = proved ? '' : ` No way is proved to be the best, none has fewer than ${count(boundClashes)} (${method}).`;
  if (!gains) return `${named}: ${sets.length} sets in order of production come to ${count(best.clashes)} to be expected, and ${proved ? 'no other way is better' : 'no better way was found'}.${sure}`;
  return `${named}: ${sets.length} sets in order of production come to ${count(asProduced.clashes)} to be expected, built as the table says to ${count(best.clashes)}${asProduced.clashes - best.clashes > 5e-6 ? '' : `, with ${figure(asProduced.overUse - best.overUse)} limits less of over-use`}.${sure}`;
}

/** The whole in a few sentences. */
export function seriesWords(series: Omit<CabinSeries, 'words'>, { names, index }: JudgeContext): readonly string[] {
  const part = (id: string): string => names.get(id) ?? id;
  const joint = (id: string): string => index.joints.get(id)?.parts.map(part).join(' and ') ?? id;
  const { parts, joints, sets, pairs } = series;
  if (parts.length === 0) return ['No part has two lots that were read alike yet: there is no series to look at.'];
  const trends = parts.filter(({ trend }) => trend.state === 'trend');
  const first = joints.find((each) => each.joint === series.first);
  const ahead = { days: series.aheadDays, lots: series.aheadLots };
  const gained = pairs.filter(({ asProduced, best }) => asProduced.clashes - best.clashes > 5e-6 || asProduced.overUse - best.overUse > 5e-4);
  return [
    `${parts.length === 1 ? 'One part has' : `${parts.length} parts have`} two lots or more; ${trends.length === 0 ? 'none has a trend' : trends.length === 1 ? `${part(trends[0].part)} has a trend` : `${trends.length} have a trend: ${listed(trends.map((each) => part(each.part)))}`}.`,
    first === undefined ? (trends.length === 0 && !joints.some(({ check }) => check === 'gloss') ? 'Without a trend nothing is forecast.' : `No joint is carried over its limit within ${ahead.days} days or ${ahead.lots} lots.`)
      : `First to clash: ${forecastWords(first, joint(first.joint), ahead)}`,
    ...(gained.length > 0 ? gained.slice(0, 1) : sets).map((plan) => buildWords(plan, part)),
  ];
}
