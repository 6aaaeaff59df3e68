import type { Cabin, Part, Source } from '../../cabin/cabin.ts';
import { sourceOf } from '../../cabin/source-of.ts';
import type { CostTerms } from './source-cost.ts';
import { leadWeeksOf } from './source-cost.ts';

/** What narrows the sources of the parts before anything is compared. */
export interface CandidateTerms extends CostTerms {
  /** Longest lead time, weeks. */
  readonly maxLeadWeeks?: number;
  /** Part to source: these are picked whatever they do. */
  readonly locked?: Readonly<Record<string, string>>;
  /** Frozen (carry-over) parts may change as well. */
  readonly releaseFrozen?: boolean;
  /** Suppliers that are out of the question: what if one drops out. */
  readonly without?: readonly string[];
}

export type Exclusion = 'locked' | 'frozen' | 'lead time' | 'lead time unknown' | 'supplier left out' | 'group';

export interface ExcludedSource {
  readonly part: string;
  readonly source: string;
  readonly because: Exclusion;
}

export interface CandidateSources {
  readonly open: ReadonlyMap<string, readonly Source[]>;
  readonly excluded: readonly ExcludedSource[];
}

/**
 * The sources of each part that may be picked, and why the others may not. A lock or a carry-over part leaves one source, which the lead
 * time and left-out suppliers still rule out, but for the lead time of a carry-over part with the source it stands by: that runs already.
 */
export function candidateSources(cabin: Cabin, terms: CandidateTerms): CandidateSources {
  const excluded: ExcludedSource[] = [];
  const open = new Map(cabin.parts.map((part): [string, readonly Source[]] => [part.id, part.sources.filter((source) => {
    const because = exclusionOf(part, source, terms);
    if (because !== undefined) excluded.push({ part: part.id, source: source.id, because });
    return because === undefined;
  })]));
  return { open, excluded };
}

const carriedOver = (part: Part, { releaseFrozen }: Pick<CandidateTerms, 'releaseFrozen'>): boolean => part.frozen === true && releaseFrozen !== true;

/** Whether a part is carried over with a source that it stands by: it is not waited for. */
export const runsAlready = (part: Part, source: Source, terms: Pick<CandidateTerms, 'releaseFrozen'>): boolean => carriedOver(part, terms) && source.id === sourceOf(part).id;

function exclusionOf(part: Part, source: Source, terms: CandidateTerms): Exclusion | undefined {
  const lock = terms.locked !== undefined && Object.hasOwn(terms.locked, part.id) ? terms.locked[part.id] : undefined;
  if (lock !== undefined ? source.id !== lock : carriedOver(part, terms) && source.id !== sourceOf(part).id) return lock === undefined ? 'frozen' : 'locked';
  if (terms.without?.includes(source.supplier) === true) return 'supplier left out';
  if (terms.maxLeadWeeks === undefined || runsAlready(part, source, terms)) return undefined;
  const lead = leadWeeksOf(source, terms);
  if (lead === undefined) return 'lead time unknown';
  return lead > terms.maxLeadWeeks ? 'lead time' : undefined;
}
