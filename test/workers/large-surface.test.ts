import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';

test('a height map of 4,000 x 4,000 points is read, filtered, measured and rendered within 1 GB, its file and the engine among it', () => {
  const script = join(import.meta.dirname, 'support', 'measure-large-surface.ts');
  const told = JSON.parse(execFileSync(process.execPath, ['--import', 'tsx', script, '4000'], { encoding: 'utf8' })) as { kind: string; saUm: number; bytes: number };
  expect(told.kind).toBe('measured');
  expect(told.saUm).toBeGreaterThan(5);
  expect(told.bytes).toBeLessThan(1e9);
}, 120_000);
