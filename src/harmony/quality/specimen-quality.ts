import { formulaLabel } from '../../colour/formula-label.ts';
import { lightByName } from '../../colour/lights.ts';
import type { Specimen } from '../../cabin/cabin.ts';
import { agreementCovariance } from '../../readings/instrument-term.ts';
import { covarianceOfSd, scaleMatrix3 } from '../../readings/matrix3.ts';
import {
  colourQuality, defaultStandardErrorShare, gaugeShare, glossQualities, readingsForStandardError, textureQualities, worstDirectionSd,
} from '../../readings/quality/index.ts';
import type { ColourQuality, GaugeShare, GlossQuality, TextureQuality } from '../../readings/quality/index.ts';
import type { GeometryClass } from '../../readings/reading.ts';
import { groupColourReadings } from '../../readings/reading-groups.ts';
import { pooledCovariance, pooledVariance } from '../../readings/sample-covariance.ts';
import { rotationsPerSpot } from '../../readings/spots.ts';
import type { MaterialClass } from '../../rules/rule-book.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { QualityLimit, QualityLimits } from './quality-limits.ts';
import { bookFormula } from './quality-limits.ts';

/** Whether there are enough spots for the limit: standard error of the mean against the goal. All in the unit of the limit. */
export interface SpotsForLimit {
  readonly limit: number;
  readonly from: QualityLimit['from'];
  /** Standard deviation of one spot, the sample's pooled with the assumed one as verdicts pool it. */
  readonly spotSd: number;
  readonly standardError: number;
  /** Share of the limit that the standard error may take. */
  readonly goalShare: number;
  readonly spots: number;
  /** Spots that reach the goal (ASTM E1345). */
  readonly spotsNeeded: number;
}

/** What a quality is held against, where a limit is known. */
interface Judged {
  readonly instrument: string;
  readonly forLimit?: SpotsForLimit;
  readonly gauge?: GaugeShare;
}

export interface ColourGroupQuality extends ColourQuality, Judged {
  readonly geometryClass: GeometryClass;
  readonly formula: string;
}
export type GlossGroupQuality = GlossQuality & Judged;
export type TextureGroupQuality = TextureQuality & Judged;

/** How good all readings of one specimen are. */
export interface SpecimenQuality {
  readonly specimen: string;
  readonly kind: Specimen['kind'];
  readonly stage: string;
  readonly lot?: string;
  /** Recorded masters have none of the three. */
  readonly part?: string;
  readonly source?: string;
  readonly supplier?: string;
  /** Place in the document. */
  readonly path: string;
  /** A part is judged on this specimen. */
  readonly stands: boolean;
  readonly colour: readonly ColourGroupQuality[];
  readonly gloss: readonly GlossGroupQuality[];
  readonly texture: readonly TextureGroupQuality[];
  /** Readings marked as outliers by a person. */
  readonly marked: number;
}

export interface QualityOptions {
  /** Share of the limit that the standard error of a mean may take; 0.16 where absent. */
  readonly standardErrorShare?: number;
}

/** Spread of one reading where the book does not know the material. Assumption, no source. */
const unknownMaterial = { readingSd: [0.2, 0.1, 0.1], glossSd: 0.2 } as const;
const qualityLight = 'D65';

/** Quality of the readings of a specimen: every group of colour readings, gloss by angle, texture by parameter. */
export function specimenQuality(
  context: JudgeContext, specimen: Specimen, row: MaterialClass | undefined, limits: QualityLimits, options: QualityOptions,
): Pick<SpecimenQuality, 'colour' | 'gloss' | 'texture' | 'marked'> {
  return {
    colour: colourGroups(context, specimen, row, limits, options),
    gloss: glossGroups(context, specimen, row, limits, options),
    texture: textureGroups(context, specimen, limits, options),
    marked: specimen.readings.filter(({ outlier }) => outlier === true).length,
  };
}

function spotsForLimit(limit: QualityLimit, spotSd: number, spots: number, { standardErrorShare = defaultStandardErrorShare }: QualityOptions): SpotsForLimit {
  return {
    limit: limit.value, from: limit.from, spotSd, standardError: spotSd / Math.sqrt(spots), goalShare: standardErrorShare, spots,
    spotsNeeded: readingsForStandardError(spotSd, standardErrorShare * limit.value),
  };
}

function colourGroups(context: JudgeContext, specimen: Specimen, row: MaterialClass | undefined, limits: QualityLimits, options: QualityOptions): ColourGroupQuality[] {
  const { book, index } = context;
  const light = lightByName(qualityLight);
  if (light === undefined) return [];
  const readingSd = row?.readingSd ?? unknownMaterial.readingSd;
  const formula = limits.colour?.formula ?? bookFormula(book, row?.kL ?? 1);
  return groupColourReadings(specimen.readings, index.conditions).groups.flatMap((group): ColourGroupQuality[] => {
    const judged = { name: qualityLight, light, observer: book.observer };
    const quality = colourQuality(group, judged, readingSd, formula, context.masterLab, book.assumed.priorReadings);
    if (quality === undefined) return [];
    const common = { ...quality, instrument: group.instrument, geometryClass: group.geometryClass, formula: formulaLabel(formula) };
    if (limits.colour === undefined) return [common];
    const assumed = scaleMatrix3(covarianceOfSd(readingSd), 1 / rotationsPerSpot(group.readings));
    const pooled = pooledCovariance(assumed, quality.spotCovariance, quality.spots, book.assumed.priorReadings);
    const sdOf = (covariance: ArrayLike<number>): number => worstDirectionSd(covariance, formula, quality.all.mean);
    const agreement = agreementCovariance(index.instruments.get(group.instrument), book.assumed.agreementSd);
    return [{
      ...common,
      forLimit: spotsForLimit(limits.colour, sdOf(pooled), quality.spots, options),
      gauge: gaugeShare(limits.colour.value, sdOf(agreement.covariance), quality.repeatCovariance && sdOf(quality.repeatCovariance), agreement.assumed),
    }];
  });
}

function glossGroups({ book, index }: JudgeContext, specimen: Specimen, row: MaterialClass | undefined, limits: QualityLimits, options: QualityOptions): GlossGroupQuality[] {
  const assumedSd = row?.glossSd ?? unknownMaterial.glossSd;
  return glossQualities(specimen.readings, index.conditions, assumedSd, book.assumed.priorReadings).map((quality): GlossGroupQuality => {
    const limit = limits.gloss.get(quality.angle);
    if (limit === undefined) return quality;
    const sd = Math.sqrt(pooledVariance(assumedSd ** 2, quality.spotSd ** 2, quality.spots, book.assumed.priorReadings));
    const agreement = index.instruments.get(quality.instrument)?.agreement?.glossSd;
    return {
      ...quality, forLimit: spotsForLimit(limit, sd, quality.spots, options),
      gauge: gaugeShare(limit.value, agreement ?? book.assumed.agreementGlossSd, quality.repeatSd, agreement === undefined),
    };
  });
}

function textureGroups({ book, index }: JudgeContext, specimen: Specimen, limits: QualityLimits, options: QualityOptions): TextureGroupQuality[] {
  const { textureRelativeSd, textureAgreementRelativeSd, priorReadings } = book.assumed;
  return textureQualities(specimen.readings, index.conditions, textureRelativeSd, priorReadings).map((quality): TextureGroupQuality => {
    if (limits.texture === undefined || !quality.relative) return quality;
    const sd = Math.sqrt(pooledVariance(textureRelativeSd ** 2, quality.spotSd ** 2, quality.spots, priorReadings));
    const agreement = index.instruments.get(quality.instrument)?.agreement?.textureRelativeSd;
    return {
      ...quality, forLimit: spotsForLimit(limits.texture, sd, quality.spots, options),
      gauge: gaugeShare(limits.texture.value, agreement ?? textureAgreementRelativeSd, quality.repeatSd, agreement === undefined),
    };
  });
}
