import type { Issue } from '../../issue.ts';
import type { SpectraRow, SpectraTable } from '../../formats/spectra-table.ts';
import type { Verb } from '../verb.ts';
import { metamerism as metamerismOf } from '../../colour/index.ts';
import { readSpectraTable } from '../../formats/spectra-table.ts';
import { fixed } from '../../report/number-text.ts';
import { lightsHelp, lightsOf, observerOf, observerOption, scaleOf, scaleOption } from '../colour-options.ts';
import { readInput } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textTable } from '../text-table.ts';
import { lastValue } from '../verb.ts';

export const metamerism: Verb = {
  name: 'metamerism',
  summary: 'Metamerism indices of pairs of spectra under test lights.',
  operands: [{ name: 'FILE', about: 'table of spectra (CSV or TSV) with columns pair and role, or `-` for the standard input' }],
  options: {
    reference: { value: 'NAME', about: 'light under which the pairs are meant to match, D65 where absent' },
    test: { value: 'NAME', about: 'test light, A and FL11 where absent', multiple: true },
    observer: observerOption,
    formula: { value: 'NAME', about: 'formula of the indices, cie76 where absent', choices: ['cie76', 'ciede2000'] },
    scale: scaleOption,
  },
  detail: [
    'The table has the columns pair, role (standard or trial) and wavelengths in nm; each pair has one row of either role.',
    'The residual is the difference under the reference light. It is removed as a factor on the tristimulus values (multiplicative, ISO 18314-4), as a shift in CIELAB (additive), or from the spectrum of the trial by matrix R (parametric). A large residual means that the pair does not match to begin with; the indices then disagree.',
    lightsHelp,
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [{ command: 'adjoin metamerism pairs.csv --test A --test FL11 --formula ciede2000', about: 'a row for each pair and test light' }],
  run(args, io) {
    const reference = lightsOf(args, 'reference', ['D65']);
    const tests = lightsOf(args, 'test', ['A', 'FL11']);
    const input = readInput(args.operands[0], io);
    const table = input.value && readSpectraTable(input.value.text, { file: input.value.name, scale: scaleOf(args), key: ['pair', 'role'] });
    const pairs = table?.value ? pairsOf(table.value, input.value?.name) : undefined;
    const issues = [...reference.issues, ...tests.issues, ...input.issues, ...(table?.issues ?? []), ...(pairs?.issues ?? [])];
    const [light] = reference.value ?? [];
    if (!light || !tests.value || !table?.value || !pairs || pairs.issues.length > 0) return refused(issues, args.json);
    const { startNm, stepNm } = table.value;
    const formula = lastValue(args, 'formula') === 'ciede2000' ? 'ciede2000' as const : 'cie76' as const;
    const results = pairs.pairs.flatMap(({ pair, standard, trial }) => (tests.value ?? []).map((test) => ({
      pair, test: test.name, formula,
      ...metamerismOf({ startNm, stepNm, values: standard.values }, { startNm, stepNm, values: trial.values }, { reference: light, test, observer: observerOf(args), formula: { name: formula } }),
    })));
    const stderr = issueLines(issues);
    if (args.json) return done(jsonText({ results }), { stderr });
    return done(textTable([
      { title: 'pair' }, { title: 'test' }, { title: 'formula' }, ...['residual', 'multiplicative', 'additive', 'parametric'].map((title) => ({ title, align: 'right' as const })),
    ], results.map((row) => ({ cells: [row.pair, row.test, row.formula, ...[row.residual, row.multiplicative, row.additive, row.parametric].map((value) => fixed(value, 3))] })), io.terminal), { stderr });
  },
};

interface Pair {
  readonly pair: string;
  readonly standard: SpectraRow;
  readonly trial: SpectraRow;
}

function pairsOf(table: SpectraTable, file: string | undefined): { readonly pairs: readonly Pair[]; readonly issues: readonly Issue[] } {
  const issues: Issue[] = [];
  const sides = new Map<string, { standard?: SpectraRow; trial?: SpectraRow; line: number }>();
  for (const row of table.rows) {
    const { pair, role } = row.labels;
    const entry = sides.get(pair) ?? { line: row.line };
    sides.set(pair, entry);
    if (role === 'standard' || role === 'trial') entry[role] = row;
    else issues.push({ code: 'unknown-role', severity: 'error', file, line: row.line, found: JSON.stringify(role), expected: 'standard or trial' });
  }
  const pairs = [...sides].flatMap(([pair, { standard, trial, line }]): Pair[] => {
    if (standard && trial) return [{ pair, standard, trial }];
    if (standard || trial) issues.push({ code: 'incomplete-pair', severity: 'error', file, line, found: `pair ${JSON.stringify(pair)} without a ${standard ? 'trial' : 'standard'}`, expected: 'one standard and one trial' });
    return [];
  });
  return { pairs, issues };
}
