import type { Action } from './action.ts';
import { cabinActions } from './cabin-actions.ts';
import { decisionActions } from './decision-actions.ts';
import { jointActions } from './joint-actions.ts';
import { lightActions } from './light-actions.ts';
import { materialActions } from './material-actions.ts';
import { outlineActions } from './outline-actions.ts';
import { partActions } from './part-actions.ts';
import { planningActions } from './planning-actions.ts';
import { proposalActions } from './proposal-actions.ts';
import { readingActions } from './reading-actions.ts';
import { registerActions } from './register-actions.ts';
import { ruleActions } from './rule-actions.ts';
import { ruleBookActions } from './rule-book-actions.ts';
import { runActions } from './run-actions.ts';
import { sourceActions } from './source-actions.ts';
import { specimenActions } from './specimen-actions.ts';
import { zoneActions } from './zone-actions.ts';

/** Every edit of the document, in the order of menus. */
export const actions: readonly Action[] = [
  ...cabinActions, ...partActions, ...outlineActions, ...sourceActions, ...specimenActions, ...readingActions, ...jointActions, ...decisionActions, ...proposalActions,
  ...zoneActions, ...lightActions, ...runActions, ...registerActions, ...planningActions, ...ruleBookActions, ...ruleActions, ...materialActions,
];

const byId: ReadonlyMap<string, Action> = new Map(actions.map((action) => [action.id, action]));

export const actionById = (id: string): Action | undefined => byId.get(id);
