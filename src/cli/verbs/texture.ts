import type { Issue, Outcome } from '../../issue.ts';
import type { SurfaceBlock, Told } from '../texture-output.ts';
import type { TextureJob } from '../texture-options.ts';
import type { Arguments, Io, OutputFile, Verb } from '../verb.ts';
import { collectReadings, defined } from '../../formats/reading-collector.ts';
import { readSurface } from '../../formats/surface-reader.ts';
import { surfaceReadingSteps } from '../../formats/surface-reading.ts';
import { jsonWriter } from '../../formats/write-json.ts';
import { hasErrors } from '../../issue.ts';
import { differenceVanishes, featuresApart, runSteps, textureVanishes, visibleDifference, visibleTexture } from '../../texture/index.ts';
import { inputName } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textureJob, textureOptions } from '../texture-options.ts';
import { surfaceJson, surfaceText } from '../texture-output.ts';
import { lastValue, usageIssue } from '../verb.ts';

export const texture: Verb = {
  name: 'texture',
  summary: 'Areal parameters and visible texture of a height map or a photograph, alone or as a pair.',
  operands: [{ name: 'FILE', about: 'height map (SDF, X3P, grid of numbers) or grey PNG photograph, or `-` for the standard input' }],
  options: textureOptions,
  detail: [
    'A height map gets the parameters of ISO 25178-2 over the surface that is left after the form, the S-filter and the L-filter (Gaussian, ISO 16610-61), and Ra, Rz and RSm of its profiles (ISO 21920-2). Missing points are counted and take no part. Sal and Str are taken where the autocorrelation falls to 0.2; Str is 0 where it does not fall that far along some direction. Std is the direction of the lay from the rows (x) towards the columns (y).',
    'Visible texture is contrast of luminance, weighted by the sensitivity of the eye (Barten 2004) at the viewing distance and luminance; 1 is the threshold. A height map is first rendered as a matt surface under the lamp; a photograph must be in linear light and lit as the other one of a pair. A photograph has no heights and gets no parameters.',
    'A pair is told apart by channels of an octave and 45 degrees: strength is how much stronger one texture is, pattern what pitch and direction add. Below 1 a difference is not seen.',
    'With --out the parameters and the spectrum of contrast are written as a reading for a cabin, where the texture check sees it at the distance of each joint.',
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin texture door.sdf --form second-order --l-filter-mm 2.5', about: 'parameters and visible texture' },
    { command: 'adjoin texture door.x3p --with dash.x3p --view-mm 700 --json', about: 'the two told apart, in full precision' },
    { command: 'adjoin texture grain.png --mm-per-pixel 0.04 --transfer linear --flat-field card.png', about: 'a photograph' },
    { command: 'adjoin texture door.sdf --form plane --specimen door-1 --out door.json', about: 'a reading to be read into a cabin' },
  ],
  run(args, io) {
    const issues: Issue[] = [];
    const job = textureJob(args, issues);
    const out = lastValue(args, 'out');
    if (out !== undefined && lastValue(args, 'specimen') === undefined) issues.push(usageIssue('missing-option', '--specimen', undefined, '--specimen NAME, since a reading belongs to a specimen'));
    const flat = lastValue(args, 'flat-field');
    const flatBytes = flat === undefined ? undefined : take(io.read(flat), issues);
    if (hasErrors(issues)) return refused(issues, args.json);
    const reading = { ...job.reading, flatField: flatBytes };
    const [first, second] = [args.operands[0], lastValue(args, 'with')]
      .map((path) => (path === undefined ? undefined : describe(path, io, { ...job, reading }, issues)));
    if (first === undefined || hasErrors(issues)) return refused(issues, args.json);
    const pair = second === undefined ? undefined : tellApart(first, second, job);
    const files = out === undefined ? [] : readingFile(out, first, args, issues);
    if (hasErrors(issues)) return refused(issues, args.json);
    const more = { stderr: issueLines(issues), files };
    if (args.json) return done(jsonText({ ...surfaceJson(first, job), ...(second && { with: surfaceJson(second, job), difference: pair ?? null }) }), more);
    return done(surfaceText([first, ...(second ? [second] : [])], pair, job, io.terminal), more);
  },
};

function take<T>(outcome: Outcome<T>, issues: Issue[]): T | undefined {
  issues.push(...outcome.issues);
  return outcome.value;
}

function describe(path: string, io: Io, job: TextureJob, issues: Issue[]): SurfaceBlock | undefined {
  const name = inputName(path);
  const bytes = take(io.read(path), issues);
  const file = bytes && take(readSurface(bytes, { ...job.reading, file: name }), issues);
  if (file === undefined) return undefined;
  const row = job.measuring.profile;
  if (typeof row === 'number' && file.kind === 'heights' && row > file.map.height) {
    issues.push(usageIssue('out-of-range', '--profile', String(row), `a row of the ${file.map.height} of ${name}`));
    return undefined;
  }
  const { data, measurement, spectrum } = runSteps(surfaceReadingSteps(file, job));
  issues.push(...(measurement?.issues ?? []).map((issue) => ({ ...issue, file: name })));
  return {
    name, file, measurement, spectrum, data,
    visible: spectrum && visibleTexture(spectrum, job.viewing), vanishes: spectrum && textureVanishes(spectrum, job.viewing),
  };
}

function tellApart(first: SurfaceBlock, second: SurfaceBlock, { viewing }: TextureJob): Told | undefined {
  if (first.spectrum === undefined || second.spectrum === undefined) return undefined;
  const both = [viewing, viewing] as const;
  const difference = visibleDifference(first.spectrum, second.spectrum, both);
  return { ...difference, apart: featuresApart(difference), vanishes: differenceVanishes(first.spectrum, second.spectrum, both) };
}

/** The surface as a set of one reading, the same bytes for the same input. */
function readingFile(path: string, { name, data }: SurfaceBlock, args: Arguments, issues: Issue[]): OutputFile[] {
  if (data === undefined) {
    issues.push({ code: 'nothing-measured', severity: 'error', file: name, found: 'no parameter and no visible texture', expected: 'something to write as a reading' });
    return [];
  }
  const collector = collectReadings();
  const spot = lastValue(args, 'spot');
  collector.add(defined({
    specimen: lastValue(args, 'specimen') ?? '', spot: spot === undefined ? undefined : { name: spot },
    conditions: collector.conditions(defined({ instrument: lastValue(args, 'instrument') })), data, row: 1,
  }));
  const written = jsonWriter.write(collector.finish({ reader: 'surface', ...(args.operands[0] === '-' ? {} : { file: name }) }));
  return [{ path, content: take(written, issues) ?? '' }];
}
