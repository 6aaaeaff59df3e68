import type { PublishedCheck } from '../../colour/index.ts';
import type { Decision, Joint, VisualRecord } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import type { Ageing, CabinComparison } from '../../harmony/compare/index.ts';
import type { CheckResult, JointResult, MeasurementRequest, PartAppearance, RunResult, Summary } from '../../harmony/judgement.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import type { Instrument } from '../../readings/reading.ts';
import type { CabinSeries } from '../../series/index.ts';
import type { Sample } from '../sample.ts';
import type { ComparedPart } from './compared-sources.ts';
import type { NextStep } from './next-steps.ts';
import type { ProposedChange } from './proposed-changes.ts';

/** A file that went into the report, by name and by the hash of its bytes. */
export interface InputFile {
  readonly role: 'cabin' | 'compared cabin' | 'rule book' | 'readings';
  readonly name: string;
  readonly sha256: string;
}

/** A part as the report names and shows it. */
export interface ReportPart {
  readonly id: string;
  readonly name: string;
  readonly zone: string;
  readonly material: string;
  readonly surface: string;
  readonly grain?: string;
  readonly supplier: string;
  readonly source: string;
  readonly checks: readonly CheckResult[];
  readonly appearance: PartAppearance | undefined;
  /** Colour for the map, under `D65` and the book's observer. */
  readonly sample: Sample | undefined;
}

export interface ReportDecision {
  readonly joint: string;
  readonly decision: Decision;
  readonly status: 'in force' | 'expired' | 'void' | 'not needed';
  /** In force, and its term ends within 90 days of the report's day. */
  readonly expiring: boolean;
  readonly why: string;
}

/** A joint with all that stands behind its verdict. */
export interface ReportJoint {
  readonly id: string;
  readonly joint: Joint;
  readonly result: JointResult;
  /** Names of the standard and the trial side. */
  readonly names: readonly [standard: string, trial: string];
  /** The check that decides the joint: its worst required one. */
  readonly leading: CheckResult | undefined;
  readonly requests: readonly MeasurementRequest[];
}

export interface BoothRow {
  readonly joint: string;
  readonly record: VisualRecord;
  readonly verdict: JointResult['verdict'];
  readonly agrees: boolean;
}

export interface ReportModel {
  readonly format: 'adjoin-report';
  readonly version: 1;
  readonly software: { readonly name: string; readonly version: string };
  readonly cabin: {
    readonly id: string;
    readonly name: string;
    readonly trimLevel?: string;
    readonly colourway?: string;
    readonly phase?: string;
    readonly revision?: string;
    readonly note?: string;
    readonly zones: readonly { readonly id: string; readonly name: string }[];
  };
  readonly stage: string;
  readonly asOf: string;
  readonly decisionRule: string;
  readonly observer: number;
  readonly lights: readonly string[];
  readonly summary: Summary & { readonly joints: number; readonly parts: number };
  /** All joints, the worst first. */
  readonly joints: readonly ReportJoint[];
  /** What is to be done about each clash without a decision in force, and by whom. */
  readonly nextSteps: readonly NextStep[];
  readonly parts: readonly ReportPart[];
  readonly runs: readonly RunResult[];
  readonly requests: readonly MeasurementRequest[];
  readonly decisions: readonly ReportDecision[];
  readonly booth: readonly BoothRow[];
  /** This cabin against another one or another stage, where that was asked for. */
  readonly comparison?: CabinComparison;
  /** This cabin as it is against itself after each exposure that specimens were brought to. */
  readonly ageing: readonly Ageing[];
  /** Parts of which a choice of source was made. */
  readonly sources: readonly ComparedPart[];
  readonly proposals: readonly ProposedChange[];
  /** Lots over time of the parts that have two at least. */
  readonly series?: CabinSeries;
  readonly ruleBook: RuleBook;
  readonly instruments: readonly Instrument[];
  readonly files: readonly InputFile[];
  readonly validation: { readonly checked: number; readonly ok: number; readonly results: readonly PublishedCheck[] };
  readonly issues: readonly Issue[];
  readonly cautions: readonly string[];
}
