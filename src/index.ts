/**
 * The library: readings in, verdicts and reports out. Everything is pure and runs in a browser, a worker and Node;
 * faults of data come back as issues, never as exceptions.
 *
 * ```ts
 * const { value: cabin, issues } = parseCabin(text);
 * if (cabin) console.log(judge(cabin, builtInRuleBooks[0]).summary);
 * ```
 */

import { provideMathjs } from './rules/mathjs-parser.ts';

provideMathjs();

// Faults as data.
export { hasErrors, issueText } from './issue.ts';
export type { Issue, Outcome, Severity } from './issue.ts';
export type * from './quantities.ts';

// The document and the rule book: each has one door in.
export { parseCabin, restoreCabin, serialiseCabin } from './cabin/index.ts';
export type * from './cabin/cabin.ts';
export { builtInRuleBooks, compileRuleBook, parseRuleBook, restoreRuleBook, ruleBookById, ruleVariables } from './rules/index.ts';
export type * from './rules/rule-book.ts';
export type * from './readings/reading.ts';

// Judging.
export { checkJson, judge, judgeCabin } from './harmony/index.ts';
export type * from './harmony/judgement.ts';

// Two cabins, or two stages of one, joint by joint; parts before and after an exposure.
export { agedStages, ageingOf, compareCabins, compareStages } from './harmony/compare/index.ts';
export type { AgedPart, Ageing, CabinComparison, JointChange, JudgedState } from './harmony/compare/index.ts';

// Reports and the record of validation.
export { publishedValues } from './report/published-values.ts';
export { prepareReport, reportCsv, reportHtml, reportJson, reportModel, reportSections, software } from './report/index.ts';
export type { InputFile, ReportAsked, ReportInput, ReportModel } from './report/index.ts';

// Readers of text tables.
export { readDifferenceTable } from './formats/difference-table.ts';
export type { DifferenceRow } from './formats/difference-table.ts';
export { readGlossTable } from './formats/gloss-table.ts';
export type { GlossRow } from './formats/gloss-table.ts';
export { readSpectraTable } from './formats/spectra-table.ts';
export type { SpectraTable, SpectraTableOptions } from './formats/spectra-table.ts';

// Surfaces: height maps and photographs in, areal parameters and visible texture out; height maps made from parameters.
export { readSurface, surfaceReadingSteps } from './formats/index.ts';
export type { SurfaceFile, SurfaceOptions, SurfaceReading, SurfaceReadingOptions } from './formats/index.ts';
export {
  contrastSpectrumSteps, measureSurfaceSteps, renderHeightsSteps, runSteps, synthesiseSurfaceSteps, visibleDifference, visibleTexture, watchSteps,
} from './texture/index.ts';
export type { GrainPattern, HeightMap, MeasureOptions, Steps, StepsWatch, SynthesisParameters } from './texture/index.ts';

// Colorimetry.
export {
  colourInconstancy, components, correctBandpass, difference, differenceWords, displayColour, formulaLabel, labToLch, labToXyz, lchToLab, lightByName, lightNames,
  metamerism, planckianLight, spectrumToLab, spectrumToXyz, userLight, weightsFor, whitePoint, xyzToLab,
} from './colour/index.ts';
export type { Light, Metamerism, Observer, PublishedCheck, Spectrum, Weights } from './colour/index.ts';
export type { DifferenceFormula, FormulaName } from './colour/difference-formula.ts';
export { differenceDistribution, withinProbability } from './readings/index.ts';
export type { Distribution, DistributionInput } from './readings/index.ts';
