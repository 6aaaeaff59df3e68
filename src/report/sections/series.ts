import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import type { CabinSeries, PartSeries } from '../../series/index.ts';
import { html } from '../markup.ts';
import { confidenceText, counted } from '../number-text.ts';
import { section } from '../pieces.ts';
import { seriesBuilds } from './series-builds.ts';
import { seriesForecasts } from './series-forecasts.ts';
import { otherLots, partLotsBlock } from './series-lots.ts';

/** Parts whose lots get a picture and a table; the others follow one row each. */
const mostBlocks = 8;

/** Lots over time: which joint clashes first if they go on, what the lots of each part did, and which to build together. */
export function series(page: Page): Content {
  const { series: found, observer } = page.model;
  if (found === undefined) return undefined;
  const shown = partsShown(found);
  const others = found.parts.filter((part) => !shown.includes(part));
  return section('series', 'Lots over time',
    html('p', { class: 'lead' }, `Lots are those of the chosen source of a part, of the kind of specimen that stands for it, in order of production and read alike; colour under ${found.parts[0].light} for the ${observer}° observer. Limits, trends and ranges are at ${confidenceText(found.confidence)} confidence.`),
    html('div', { class: 'sentence' }, found.words.slice(0, 2).map((words) => html('p', {}, words))),
    seriesForecasts(page, found),
    html('h3', {}, 'What the lots did'),
    shown.length > 0 && html('p', { class: 'lead' }, 'T² after Hotelling says how far a lot lies from the others in L*, a* and b* at once, by their own scatter; over its limit a lot is outside. A trend is claimed from five lots on, and only where chance would hardly give such a slope.'),
    shown.map((part) => partLotsBlock(page, found, part)),
    otherLots(page, found, others),
    seriesBuilds(page, found),
    html('ul', { class: 'caution' },
      html('li', {}, 'A forecast carries a straight line on. It knows nothing of a new batch of pigment, a mended tool or a change of process, and is no ground to release or to stop parts by itself.'),
      html('li', {}, 'Ranges come from how well the lines are known, without the scatter of a single lot. Colour is forecast, and gloss where a part has a trend in it, held to the limit of its present level; texture is not. Lots count the same whatever their size.')));
}

/** Something to tell: a trend in colour or gloss, or a lot outside. Where no part has any, the one with the most lots stands for the rest. */
const telling = (part: PartSeries): boolean => part.trend.state === 'trend' || part.gloss?.state === 'trend' || astray(part);

/** A lot outside among the others. Against a master it only says that the readings tell it from that, by whatever little. */
const astray = ({ chart }: PartSeries): boolean => chart.reference === 'lots' && chart.outside.length > 0;

function partsShown({ parts }: CabinSeries): readonly PartSeries[] {
  const rank = (part: PartSeries): number => (part.trend.state === 'trend' ? 0 : astray(part) ? 1 : 2);
  const told = parts.filter(telling).sort((first, second) => rank(first) - rank(second)).slice(0, mostBlocks);
  if (told.length > 0) return told;
  const [most] = parts.filter(({ chart }) => chart.reason === undefined && chart.reference === 'lots').sort((first, second) => second.lots.length - first.lots.length);
  return most === undefined ? [] : [most];
}

/** The line of the first page. */
export function seriesShort({ model: { series: found } }: Page): readonly [Content, Content] | undefined {
  if (found === undefined || !found.parts.some(telling)) return undefined;
  const outside = found.parts.filter(astray).length;
  return ['Lots over time', html('p', {}, found.words.slice(0, 2).join(' '), outside > 0 && ` ${counted(outside, 'part has', 'parts have')} a lot outside.`, ' ', html('a', { href: '#series' }, 'Lots over time'), '.')];
}
