import type { JointResult } from '../../../src/harmony/judgement.ts';
import type { RuleBook } from '../../../src/rules/index.ts';
import type { JointRuleLook } from '../../../src/workers/session-look.ts';
import type { BookTrial } from '../../controllers/book-trial.ts';
import type { OpenCabin } from '../../controllers/open-cabin.ts';
import type { Route } from '../../controllers/route.ts';
import type { PartColour } from '../../model/part-colours.ts';

/** What the elements of the rules' place share. A new object whenever anything of it changes. */
export interface RulesContext {
  readonly open: OpenCabin;
  readonly book: RuleBook;
  readonly names: ReadonlyMap<string, string>;
  readonly colours: ReadonlyMap<string, PartColour>;
  /** The joint that formulas are tried on, and what is known of it. */
  readonly joint: JointResult | undefined;
  readonly look: JointRuleLook | undefined;
  readonly trial: BookTrial;
  readonly linkTo: (change: Partial<Route>) => string;
  /** Sets choices of the address; an empty one is taken out. */
  readonly set: (change: Readonly<Record<string, string>>, refine?: boolean) => void;
}

export const draftEvent = 'adjoin-draft';

/** A joint by the names of its parts. */
export const jointWords = ({ names }: Pick<RulesContext, 'names'>, { parts }: Pick<JointResult, 'parts'>): string => parts.map((part) => names.get(part) ?? part).join(' / ');
