import type { Issue } from '../../issue.ts';
import type { Verb } from '../verb.ts';
import { labToLch, spectrumToXyz, weightsFor, xyzToLab } from '../../colour/index.ts';
import { readSpectraTable } from '../../formats/spectra-table.ts';
import { fixed } from '../../report/number-text.ts';
import { lightsHelp, lightsOf, observerOf, observerOption, scaleOf, scaleOption } from '../colour-options.ts';
import { readInput } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textTable } from '../text-table.ts';
import { lastValue } from '../verb.ts';

export const colour: Verb = {
  name: 'colour',
  summary: 'Tristimulus values, CIELAB and LCh of spectra under any lights.',
  operands: [{ name: 'FILE', about: 'table of spectra (CSV or TSV), or `-` for the standard input' }],
  options: {
    light: { value: 'NAME', about: 'light, D65 where absent', multiple: true },
    observer: observerOption,
    method: { value: 'METHOD', about: 'e308 where data of 10 nm or 20 nm allow it, else 1nm', choices: ['e308', '1nm'] },
    scale: scaleOption,
  },
  detail: [
    'The table has a header `id` and wavelengths in nm (400,410,...), evenly spaced, then a row a spectrum. Values are reflectance factors, 1 for the perfect diffuser. Further columns of text are passed over.',
    'e308: weights of ASTM E308 computed after ASTM E2022 over 360 nm to 780 nm, weights of missing ends added to the end values. 1nm: data interpolated to 1 nm after CIE 167 (Sprague) over 360 nm to 780 nm, ends held. The white comes from the same weights. No bandpass correction is made.',
    lightsHelp,
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin colour plaques.csv --light D65 --light A --light FL11', about: 'a row for each spectrum and light' },
    { command: 'adjoin colour - --scale percent --json < plaques.tsv', about: 'values in per cent, from the standard input' },
  ],
  run(args, io) {
    const lights = lightsOf(args, 'light', ['D65']);
    const input = readInput(args.operands[0], io);
    const table = input.value && readSpectraTable(input.value.text, { file: input.value.name, scale: scaleOf(args) });
    const issues: Issue[] = [...lights.issues, ...input.issues, ...(table?.issues ?? [])];
    if (!lights.value || !table?.value) return refused(issues, args.json);
    const { startNm, stepNm, count, rows } = table.value;
    const observer = observerOf(args);
    const asked = lastValue(args, 'method');
    const every = lights.value.map((light) => weightsFor(light, observer, startNm, stepNm, count, asked === 'e308' || asked === '1nm' ? asked : 'auto'));
    if (asked !== undefined && every.some((weights) => weights.method !== asked)) {
      issues.push({
        code: 'method-not-available', severity: 'warning', path: '--method', found: `data from ${startNm} nm in steps of ${stepNm} nm`, expected: 'multiples of 10 nm or 20 nm for e308',
        hint: 'The 1nm method was used',
      });
    }
    const results = rows.flatMap((row) => every.map((weights) => {
      const xyz = spectrumToXyz(row.values, weights);
      const lab = xyzToLab(xyz, weights.white);
      return { id: row.id, light: weights.light.name, observer, method: weights.method, xyz, lab, lch: labToLch(lab) };
    }));
    const stderr = issueLines(issues);
    if (args.json) return done(jsonText({ results }), { stderr });
    const numbers = ['X', 'Y', 'Z', 'L*', 'a*', 'b*', 'C*ab', 'hab'].map((title) => ({ title, align: 'right' as const }));
    return done(textTable([{ title: 'id' }, { title: 'light' }, { title: 'observer', align: 'right' }, { title: 'method' }, ...numbers],
      results.map(({ id, light, method, xyz, lab, lch }) => ({
        cells: [id, light, `${observer}°`, method, ...[...xyz, ...lab, lch[1]].map((value) => fixed(value, 2)), fixed(lch[2], 1)],
      })), io.terminal), { stderr });
  },
};
