import { counted } from '../../../src/report/number-text.ts';
import type { ImportItem } from '../../controllers/import-desk.ts';

/** How a file stands: `ready` can be taken over, `asks` waits for the user, `refused` has faults. */
export interface ImportState {
  readonly mark: 'reading' | 'ready' | 'asks' | 'refused' | 'taken';
  readonly words: string;
}

/** Codes of issues that the user settles on the page, by an answer or a place. */
const settled = new Set(['question-open', 'part-needed', 'unknown-part', 'source-needed', 'unknown-source', 'specimen-kind-needed', 'unknown-master']);

export const isSettled = (code: string): boolean => settled.has(code);

export function importState({ state, planned, issues }: ImportItem): ImportState {
  if (state === 'reading') return { mark: 'reading', words: 'being read' };
  if (state === 'refused') return { mark: 'refused', words: `refused, ${counted(issues.filter(({ severity }) => severity === 'error').length, 'fault')}` };
  if (state === 'taken') return { mark: 'taken', words: `taken over, ${counted(planned?.readings ?? 0, 'reading')}` };
  if (planned === undefined) return { mark: 'reading', words: 'being planned' };
  if (planned.taken) return { mark: 'ready', words: 'ready' };
  const errors = planned.issues.filter(({ severity }) => severity === 'error');
  const questions = errors.filter(({ code }) => code === 'question-open').length;
  const places = errors.filter(({ code }) => code !== 'question-open' && isSettled(code)).length;
  const faults = errors.length - questions - places;
  if (faults > 0) return { mark: 'refused', words: counted(faults, 'fault') };
  return { mark: 'asks', words: [...(questions > 0 ? [counted(questions, 'question')] : []), ...(places > 0 ? [counted(places, 'place to give', 'places to give')] : [])].join(', ') };
}
