import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'adjoin-consumer-'));
const installed = join(folder, 'node_modules', 'adjoin');
const tool = (name: string, words: readonly string[], cwd = root): string =>
  execFileSync(process.execPath, [join(root, 'node_modules', name), ...words], { cwd, encoding: 'utf8', env: { ...process.env, VITEST: undefined, NODE_ENV: undefined } });

// The package as npm would lay it out: its own files built, its dependencies beside it.
beforeAll(() => {
  mkdirSync(installed, { recursive: true });
  cpSync(join(root, 'package.json'), join(installed, 'package.json'));
  tool('vite/bin/vite.js', ['build', '--mode', 'library', '--logLevel', 'warn', '--outDir', join(installed, 'dist', 'library')]);
  tool('typescript/bin/tsc', ['-p', 'src/library.tsconfig.json', '--outDir', join(installed, 'dist', 'library', 'types')]);
  for (const name of Object.keys(packageFile.dependencies)) {
    mkdirSync(join(folder, 'node_modules', name, '..'), { recursive: true });
    symlinkSync(join(root, 'node_modules', name), join(folder, 'node_modules', name));
  }
  writeFileSync(join(folder, 'package.json'), '{"type": "module"}');
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({
    compilerOptions: {
      target: 'ES2022', module: 'nodenext', strict: true, noUncheckedIndexedAccess: true, exactOptionalPropertyTypes: true,
      skipLibCheck: false, types: ['node'], typeRoots: [join(root, 'node_modules', '@types')], outDir: 'out',
    },
    include: ['*.ts'],
  }));
}, 180_000);
afterAll(() => rmSync(folder, { recursive: true }));

test('the package is used by another program: it compiles under strict settings, runs, and judges a cabin', () => {
  writeFileSync(join(folder, 'use.ts'), `
    import { readFileSync } from 'node:fs';
    import { builtInRuleBooks, difference, judge, lightByName, parseCabin, spectrumToLab, withinProbability } from 'adjoin';
    import type { Cabin, Distribution, Issue, Judgement, Lab, RuleBook } from 'adjoin';

    const { value, issues }: { value: Cabin | undefined; issues: readonly Issue[] } = parseCabin(readFileSync(process.argv[2]!, 'utf8'));
    const [book]: readonly (RuleBook | undefined)[] = builtInRuleBooks;
    const light = lightByName('D65');
    if (value === undefined || book === undefined || light === undefined) throw new Error(issues.map(({ code }) => code).join());
    const judgement: Judgement = judge(value, book);
    const white: Lab = spectrumToLab({ startNm: 400, stepNm: 10, values: new Array<number>(31).fill(1) }, light, 10);
    const dE: number = difference({ name: 'ciede2000' }, [50, 2.5, 0], [50, 0, -2.5]);
    const within = (distribution: Distribution): number => distribution.mean;
    process.stdout.write(JSON.stringify({ joints: judgement.joints.length, white: white[0], dE, functions: [typeof withinProbability, typeof within] }));
  `);
  tool('typescript/bin/tsc', ['-p', '.'], folder);
  const out = JSON.parse(execFileSync(process.execPath, ['out/use.js', join(root, 'demo-data', 'first-steps.cabin.json')], { cwd: folder, encoding: 'utf8' })) as Record<string, unknown>;
  const cabin = JSON.parse(readFileSync(join(root, 'demo-data', 'first-steps.cabin.json'), 'utf8')) as { joints: unknown[] };
  expect(out).toMatchObject({ joints: cabin.joints.length, functions: ['function', 'function'] });
  // The perfect diffuser has L* = 100 (ISO/CIE 11664-4); pair 16 of Sharma, Wu and Dalal is 4.3065 apart.
  expect(out['white']).toBeCloseTo(100, 9);
  expect(out['dE']).toBeCloseTo(4.3065, 4);
}, 60_000);

test('wrong use does not compile', () => {
  rmSync(join(folder, 'use.ts'), { force: true });
  writeFileSync(join(folder, 'wrong.ts'), `
    import { judge, spectrumToLab } from 'adjoin';
    spectrumToLab(5, 'D65', 10);
    judge('cabin');
  `);
  let printed = '';
  try {
    tool('typescript/bin/tsc', ['-p', '.'], folder);
  } catch (error) {
    printed = (error as { stdout: string }).stdout;
  }
  expect(printed).toMatch(/wrong\.ts\(3,19\).*TS2345/);
  expect(printed).toMatch(/wrong\.ts\(4,5\).*TS2554/);
}, 60_000);
