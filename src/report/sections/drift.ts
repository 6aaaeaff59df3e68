import type { RunResult } from '../../harmony/judgement.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { runSteps } from '../figures/run-steps.ts';
import { printTheme } from '../figures/theme.ts';
import { data, figure, html, named } from '../markup.ts';
import { fixed, limitUseText } from '../number-text.ts';
import { pagedTable, section, verdictWord } from '../pieces.ts';

/** Drift along runs of joints: each step may hold and the ends still clash. */
export function drift(page: Page): Content {
  const { runs, observer } = page.model;
  if (runs.length === 0) return undefined;
  const name = (id: string): string => page.part(id)?.name ?? id;
  return section('drift', 'Drift along runs',
    html('p', { class: 'lead' }, 'Along a run of joints each step may hold and its ends still clash. The ends are judged as parts that are seen together.'),
    pagedTable<RunResult>(`Runs, ends against each other, ${observer}° observer`, [
      { title: 'Run', cell: (run) => [named(name(run.parts[0] ?? '')), ' to ', named(name(run.parts.at(-1) ?? '')), html('span', { class: 'quiet' }, ` ${run.parts.length} parts`)] },
      { title: 'Along it', cell: (run) => run.limit !== undefined && figure(runSteps({ steps: run.steps, limit: run.limit, label: `Difference from the first part: ${run.steps.map((step) => fixed(step, 2)).join(', ')}; limit ${fixed(run.limit, 2)}` }, { width: 110, height: 30 }, printTheme)) },
      { title: 'Verdict', cell: (run) => verdictWord({ verdict: run.verdict, accepted: false }) },
      { title: 'Value', number: true, cell: (run) => [data(run.value, fixed(run.value, 2)), run.criterion !== undefined && html('span', { class: 'quiet' }, ` ${run.criterion}`)] },
      { title: 'Limit', number: true, cell: (run) => data(run.limit, fixed(run.limit, 2)) },
      { title: 'Limit use', number: true, cell: (run) => data(run.limitUse, limitUseText(run.limitUse)) },
      { title: 'In words', wide: true, cell: (run) => run.sentence },
    ], runs));
}
