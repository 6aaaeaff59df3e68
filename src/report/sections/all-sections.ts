import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { ageing } from './ageing.ts';
import { booth } from './booth.ts';
import { acceptedClashes, clashes } from './clashes.ts';
import { comparison } from './comparison.ts';
import { decisions } from './decisions.ts';
import { drift } from './drift.ts';
import { holding } from './holding.ts';
import { limits, signOff } from './limits-and-sign-off.ts';
import { method } from './method.ts';
import { nearMisses } from './near-misses.ts';
import { openJoints } from './open-joints.ts';
import { partChecks } from './part-checks.ts';
import { ruleBookSection } from './rule-book.ts';
import { series } from './series.ts';
import { sourcesCompared } from './sources-compared.ts';
import { traceability } from './traceability.ts';
import { validation } from './validation.ts';

/** A section of the page after its first: its id, what it is called in a list of choices, and what makes it; nothing where there is nothing to say. */
export interface ReportSection {
  readonly id: string;
  readonly title: string;
  readonly make: (page: Page) => Content;
  /** Always in the report: without it the verdicts are without their grounds. */
  readonly needed?: true;
}

/** In the order of the page. */
export const reportSections: readonly ReportSection[] = [
  { id: 'clashes', title: 'Clashes', make: clashes, needed: true },
  { id: 'open', title: 'Open joints and requests', make: openJoints, needed: true },
  { id: 'accepted', title: 'Accepted clashes', make: acceptedClashes, needed: true },
  { id: 'near-misses', title: 'Tone steps and contrasts', make: nearMisses },
  { id: 'parts', title: 'Masters and caps', make: partChecks },
  { id: 'drift', title: 'Drift along runs', make: drift },
  { id: 'compared', title: 'Compared with', make: comparison },
  { id: 'ageing', title: 'Ageing', make: ageing },
  { id: 'series', title: 'Lots over time', make: series },
  { id: 'decisions', title: 'Decisions', make: decisions },
  { id: 'booth', title: 'Booth against numbers', make: booth },
  { id: 'sources', title: 'Sources compared', make: sourcesCompared },
  { id: 'holding', title: 'Joints that hold', make: holding },
  { id: 'method', title: 'Method', make: method },
  { id: 'rule-book', title: 'Rule book', make: ruleBookSection },
  { id: 'traceability', title: 'What this rests on', make: traceability },
  { id: 'validation', title: 'Validation', make: validation },
  { id: 'limits', title: 'Limits and cautions', make: limits, needed: true },
  { id: 'sign-off', title: 'Sign-off', make: signOff },
];
