import type { CabinSeries, ForecastPlace, JointForecast } from '../../series/index.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { forecastLines } from '../figures/forecast-lines.ts';
import { printTheme } from '../figures/theme.ts';
import { data, figure, html, named } from '../markup.ts';
import { confidenceText, counted, fixed, limitUseText } from '../number-text.ts';
import { jointAnchor, jointNames, pagedTable } from '../pieces.ts';

/** Joints that the picture shows, the first to clash first. */
const mostRows = 10;

const told = ({ state }: JointForecast): boolean => state === 'over its limit' || state === 'will clash' || state === 'stays within';

/** When each joint comes over its limit if the trends go on: a picture of the first and a table of all. */
export function seriesForecasts(page: Page, found: CabinSeries): Content {
  const rows = found.joints.filter(told);
  const silent = found.joints.filter((joint) => !told(joint));
  if (rows.length === 0) return html('p', { class: 'further' }, 'No joint has a forecast: ', reasons(silent), '.');
  const [{ unit }] = rows;
  const drawn = rows.filter((row) => row.unit === unit).slice(0, mostRows);
  const hex = (part: string | undefined): string | undefined => (part === undefined ? undefined : page.sample(part, 'D65')?.hex);
  return [
    html('h3', {}, 'Joints, if the lots go on as they went'),
    html('figure', { class: 'forecast' },
      figure(forecastLines(drawn.map((forecast) => ({
        forecast, name: `${page.joint(forecast.joint)?.names.join(' and ') ?? forecast.joint}${forecast.check === 'gloss' ? `, gloss at ${forecast.angle ?? ''}°` : ''}`, colours: [hex(forecast.sides[0]?.part), hex(forecast.sides[1]?.part)],
      })), unit === 'lot' ? found.aheadLots : found.aheadDays, 680, printTheme)),
      html('figcaption', {}, 'From the latest lot on. Thin line: within the limit by the lines of the lots. Tick and saw: over it. Bar: where the lines leave room for the day.',
        rows.length > drawn.length && ` The ${drawn.length} that come first; the table has all ${rows.length}.`)),
    pagedTable<JointForecast>(`Forecast of joints, ranges at ${confidenceText(found.confidence)} confidence, ${page.model.observer}° observer; looked ahead ${found.aheadDays} days or ${found.aheadLots} lots`, [
      { title: 'Joint', cell: ({ joint }) => jointLink(page, joint) },
      { title: 'Check', steady: true, cell: ({ check }) => check },
      { title: 'Use now', number: true, cell: ({ now }) => data(now?.use, limitUseText(now?.use)) },
      { title: 'Value now', number: true, cell: ({ now, check }) => [data(now?.value, fixed(now?.value, 2)), now?.limit !== undefined && html('span', { class: 'quiet' }, ' of ', data(now.limit, fixed(now.limit, 2))), check === 'gloss' && html('span', { class: 'quiet' }, ' GU')] },
      { title: 'Under', steady: true, cell: ({ now, there, formula, check }) => (check === 'gloss' ? (there ?? now)?.criterion : [(there ?? now)?.light, html('span', { class: 'quiet' }, html('br', {}), quantity((there ?? now)?.criterion, formula))]) },
      { title: 'Over its limit', cell: (joint) => over(joint, found) },
      { title: 'Earliest', steady: true, cell: ({ earliest }) => placeText(earliest) },
      { title: 'Latest', steady: true, cell: ({ state, latest }) => (state === 'will clash' && latest === undefined ? 'open' : placeText(latest)) },
      { title: 'Taken from', cell: ({ sides }) => sides.map(({ part, course, lots }, index) => [index > 0 && html('br', {}), named(page.part(part)?.name ?? part), html('span', { class: 'quiet' }, ` ${courseWords(course, lots)}`)]) },
    ], rows, 'compact'),
    silent.length > 0 && html('p', { class: 'further' }, `${counted(silent.length, 'joint has', 'joints have')} no forecast: `, reasons(silent), '.'),
  ];
}

const quantity = (criterion: string | undefined, formula: string | undefined): string => (criterion === undefined || criterion === 'ΔE' ? formula ?? '' : criterion);

const jointLink = (page: Page, id: string): Content => {
  const entry = page.joint(id);
  return entry === undefined ? named(id) : html('a', { href: `#${jointAnchor(page.place(id))}` }, jointNames(entry));
};

const courseWords = (course: JointForecast['sides'][number]['course'], lots: number): string =>
  (course === 'trend' ? `trend of ${counted(lots, 'lot')}` : course === 'mean of lots' ? `mean of ${counted(lots, 'lot')}` : 'as it stands');

export const placeText = (place: ForecastPlace | undefined): string => (place === undefined ? '–' : place.day ?? `${place.ahead} ${place.ahead === 1 ? 'lot' : 'lots'} on`);

function over({ state, when, unit, beyondLots }: JointForecast, { aheadDays, aheadLots }: CabinSeries): Content {
  if (state === 'over its limit') return html('strong', {}, 'already');
  if (state === 'stays within') return html('span', { class: 'quiet' }, `not in ${unit === 'day' ? counted(aheadDays, 'day') : counted(aheadLots, 'lot')}`);
  return [html('strong', { class: 'steady' }, placeText(when)), beyondLots === true && html('span', { class: 'quiet' }, html('br', {}), 'farther than its lots look back')];
}

/** Why joints have none, counted. */
function reasons(joints: readonly JointForecast[]): string {
  const count = new Map<string, number>();
  for (const { state, reason } of joints) {
    const why = state === 'not judged' ? reason ?? 'colour is not judged' : state === 'too few lots' ? 'too few lots to tell a trend' : 'no trend on either side';
    count.set(why, (count.get(why) ?? 0) + 1);
  }
  return [...count].sort((first, second) => second[1] - first[1]).map(([why, joint]) => `${why} (${joint})`).join(', ') || 'no part of it has a trend';
}
