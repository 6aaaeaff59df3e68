import type { JudgedCabin } from '../../harmony/index.ts';
import type { Issue, Outcome } from '../../issue.ts';
import type { Terminal, Verb } from '../verb.ts';
import { nearestName } from '../../cabin/schema/nearest-name.ts';
import { masterReadings } from '../../formats/master-readings.ts';
import { writers } from '../../formats/writers.ts';
import { driftSentence, judgeCabin, masterOverview } from '../../harmony/index.ts';
import type { MasterOverview } from '../../harmony/index.ts';
import { hasErrors } from '../../issue.ts';
import { fixed, limitUseText } from '../../report/number-text.ts';
import { masterSheetHtml } from '../../report/masters/index.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { printable } from '../printable.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { lastValue, usageIssue } from '../verb.ts';

const endings = ['.html', '.cxf', '.csv'] as const;

export const masters: Verb = {
  name: 'masters',
  summary: 'Show the recorded masters, their drift, and parts that are within them and clash all the same; write one for a supplier.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    master: { value: 'ID', about: 'the master to write; needed with --out' },
    supplier: { value: 'NAME', about: 'id or name of the supplier that the sheet is for: only its parts are listed' },
    out: { value: 'FILE', about: 'where to write the master: .html for a page, .cxf for its readings as ISO 17972-1, .csv for a table' },
  },
  detail: [
    'Without --out: every master with its issue, dates, drift and parts; then the joints that clash although both parts are within their masters.',
    'Exit: 0 done, 2 bad input; then nothing is written.',
  ],
  examples: [
    { command: 'adjoin masters shuttle.cabin.json', about: 'what is recorded, and what clashes within it' },
    { command: 'adjoin masters shuttle.cabin.json --master master-hide --out out/hide.html', about: 'one page for a supplier' },
    { command: 'adjoin masters shuttle.cabin.json --master master-hide --out out/hide.cxf', about: 'its readings for another program' },
  ],
  run(args, io) {
    const out = lastValue(args, 'out');
    const ending = endings.find((candidate) => out?.toLowerCase().endsWith(candidate));
    const master = lastValue(args, 'master');
    const usage: Issue[] = [
      ...(out !== undefined && ending === undefined ? [usageIssue('unknown-format', '--out', out, `an ending of ${endings.join(', ')}`)] : []),
      ...(out !== undefined && master === undefined ? [usageIssue('missing-option', '--master', undefined, '--master ID with --out')] : []),
    ];
    const input = loadJudgeInput(args, io);
    if (input.value === undefined || usage.length > 0) return refused([...usage, ...input.issues.filter((issue) => issue.severity === 'error')], args.json);
    const { cabin, ruleBook, options } = input.value;
    const supplier = lastValue(args, 'supplier');
    const known = cabin.suppliers.find(({ id, name }) => id === supplier || name === supplier);
    if (supplier !== undefined && known === undefined) return refused([usageIssue('unknown-supplier', '--supplier', supplier, `one of ${cabin.suppliers.map(({ id }) => id).join(', ')}`)], args.json);
    const judged = judgeCabin(cabin, ruleBook, options);
    if (hasErrors(judged.judgement.issues)) return refused([...input.issues, ...judged.judgement.issues], args.json);
    const overview = masterOverview(judged);
    if (master !== undefined && !overview.masters.some((entry) => entry.master === master)) {
      const ids = overview.masters.map((entry) => entry.master);
      const near = nearestName(master, ids);
      return refused([usageIssue('unknown-master', '--master', master, `one of ${ids.join(', ')}`, near === undefined ? undefined : `Did you mean ${near}?`)], args.json);
    }
    const shown = master === undefined ? overview : { ...overview, masters: overview.masters.filter((entry) => entry.master === master) };
    if (out === undefined || ending === undefined || master === undefined) {
      return done(args.json ? jsonText(shown) : overviewText(shown, io.terminal), { stderr: issueLines(input.issues) });
    }
    const written = masterFile(judged, master, known?.id, ending);
    if (written.value === undefined) return refused(written.issues, args.json);
    return done(args.json ? jsonText({ written: out, masters: shown.masters }) : `Wrote ${out}.\n`, { files: [{ path: out, content: written.value }], stderr: issueLines([...input.issues, ...written.issues]) });
  },
};

function masterFile(judged: JudgedCabin, master: string, supplier: string | undefined, ending: (typeof endings)[number]): Outcome<string> {
  if (ending === '.html') return { value: masterSheetHtml(judged, master, supplier), issues: [] };
  const set = masterReadings(judged.context.cabin, master);
  const writer = writers.find(({ extension }) => extension === ending);
  return set === undefined || writer === undefined ? { value: undefined, issues: [] } : writer.write(set, { created: judged.context.asOf });
}

function overviewText({ masters: entries, withinYetClashing, partsWithoutMaster }: MasterOverview, terminal: Terminal): string {
  const heading = (text: string): string => `\n${styled(text, 'strong', terminal)}\n`;
  return [
    textTable([
      { title: 'master' }, { title: 'name' }, { title: 'issue' }, { title: 'state' }, { title: 'expires' }, { title: 'remeasure' }, { title: 'L*', align: 'right' }, { title: 'a*', align: 'right' }, { title: 'b*', align: 'right' }, { title: 'parts', align: 'right' },
    ], entries.map((entry) => ({
      cells: [entry.master, entry.name, entry.issue ?? '', entry.state, entry.expires?.on ?? '', entry.remeasure?.on ?? '', ...[0, 1, 2].map((axis) => fixed(entry.lab?.lab[axis], 2)), String(entry.parts.length)],
      ...(entry.state === 'in force' ? {} : { emphasis: 'caution' as const }),
      ...(entry.drifts.length === 0 ? {} : { below: entry.drifts.map(driftSentence).join(' ') }),
    })), terminal),
    ...(withinYetClashing.length === 0 ? [] : [heading('Within their masters, and clashing'), textTable([
      { title: 'joint', most: 50 }, { title: 'check' }, { title: 'first', align: 'right' }, { title: 'second', align: 'right' }, { title: 'joint', align: 'right' },
    ], withinYetClashing.map((pair) => ({
      cells: [pair.joint, pair.check, limitUseText(pair.masterUses[0]), limitUseText(pair.masterUses[1]), limitUseText(pair.jointUse)], emphasis: pair.accepted ? 'strong' as const : 'alarm' as const, below: pair.sentence,
    })), terminal)]),
    ...(partsWithoutMaster.length === 0 ? [] : [`\n${wrapped(printable(`Held to no master: ${partsWithoutMaster.join(', ')}.`), terminal.columns).join('\n')}\n`]),
  ].join('');
}
