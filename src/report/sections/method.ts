import type { LightRule } from '../../rules/rule-book.ts';
import type { Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { bookFormulaLabel } from '../../rules/index.ts';
import { data, html, named } from '../markup.ts';
import { fixed, percent } from '../number-text.ts';
import { section, table, terms } from '../pieces.ts';

/** How the verdicts came about: colorimetry, lights, geometry, decision rule, uncertainty; assumptions marked. */
export function method(page: Page): Markup {
  const { ruleBook, observer } = page.model;
  const { assumed, decision } = ruleBook;
  const formula = bookFormulaLabel(ruleBook);
  const sd = assumed.agreementSd.map((value) => String(value)).join(', ');
  return section('method', 'Method',
    terms([
      ['Colour', `Tristimulus values from reflectance over 360 nm to 780 nm: at 10 nm and 20 nm with weights of ASTM E308 computed after ASTM E2022, at other intervals as 1 nm sums of spectra interpolated after CIE 167; weights of missing ends are added to the end values. The white is taken from the same weights. CIELAB after ISO/CIE 11664-4, ${observer}° observer.`],
      ['Difference', `${formula} unless a rule says otherwise; the formula used stands beside every value. Differences are trial minus standard. The standard is the reference part of the joint; without one the ordered formulas take the stricter direction.`],
      ['Comparable', `Readings are grouped by geometry, aperture and UV state before any mean is taken. Unlike geometries are never compared. Order of preference: ${ruleBook.geometryOrder.join(', ')}. Data given as CIELAB are judged under their own light and observer only.`],
      ['Gloss', 'Specular gloss after ISO 2813, both sides at one angle, which is named beside the value in gloss units (GU). Not applicable to pile and woven textile.'],
      ['Texture', 'Areal parameters after ISO 25178-2 as given with the readings, for parts of one grain.'],
      ['Uncertainty', `The covariance of a mean pools the spread of the specimen's spots with the book's assumed covariance of one reading (weight ${assumed.priorReadings} readings) and adds the agreement of the instruments, which does not shrink with the number of spots. Instruments without an agreement set are given standard deviations of ${sd} in L*, a*, b* and ${assumed.agreementGlossSd} GU. Correlation of the agreement: ${assumed.correlation.sameSession} in one session of one instrument, ${assumed.correlation.sameInstrument} on one instrument otherwise, ${assumed.correlation.different} between instruments. (${assumed.basis})`],
      ['Decision', decision.rule === 'guarded'
        ? `Probability of conformity after JCGM 106 and ISO 14253-1. A check holds where the probability of being inside all its limits is at least ${percent(decision.confidence)}; it clashes where that probability is at most ${percent(1 - decision.confidence)} and the value, freed of the bias that noise gives a distance, exceeds a limit by at least 1.645 standard uncertainties; else it is open. All lights of a colour check are one event, drawn in their joint covariance. (${decision.basis})`
        : `A check holds where its value is at most its limit and clashes otherwise; uncertainty is shown and not used. (${decision.basis})`],
      ['Joint', 'A joint is as bad as the worst of its required checks: clashes, then open, then holds. Checks marked if-measured count where there is data; advisory ones are shown and never counted.'],
      ['Metamerism', 'Where a pair holds in D65 and clashes elsewhere, indices of metamerism after CIE 15 and ISO 18314-4 are given as its cause.'],
    ]),
    table<LightRule>(`Lights of the rule book, ${observer}° observer`, [
      { title: 'Light', cell: (light) => named(light.light) },
      { title: 'Factor on the limit', number: true, cell: (light) => data(light.factor, fixed(light.factor, 2)) },
      { title: 'Standing', cell: (light) => light.standing },
      { title: 'Basis', wide: true, cell: (light) => basis(light.basis) },
    ], ruleBook.lights));
}

/** A basis as printed: values without a published source are set apart. */
export const basis = (text: string): Markup => (/no source/.test(text) ? html('em', { class: 'no-source' }, text) : html('span', {}, text));
