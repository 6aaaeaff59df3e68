import type { Light, Observer } from '../colour/index.ts';
import type { Outcome } from '../issue.ts';
import type { ReflectanceScale } from '../formats/spectra-table.ts';
import type { Arguments } from './verb.ts';
import { lightByName, lightNames } from '../colour/index.ts';
import { nearestName } from '../cabin/schema/nearest-name.ts';
import { lastValue, usageIssue } from './verb.ts';

export const observerOption = { value: 'DEGREES', about: 'standard observer, 10 where absent', choices: ['2', '10'] } as const;
export const scaleOption = { value: 'SCALE', about: 'scale of the values; a line `# scale: percent` in the file says the same; fraction (0..1) where absent', choices: ['fraction', 'percent'] } as const;

export const observerOf = (args: Arguments): Observer => (lastValue(args, 'observer') === '2' ? 2 : 10);

export const scaleOf = (args: Arguments): ReflectanceScale | undefined => {
  const scale = lastValue(args, 'scale');
  return scale === 'percent' || scale === 'fraction' ? scale : undefined;
};

/** Sentence of help that lists the lights. */
export const lightsHelp = `Lights: ${lightNames.join(' ')}. P2300 is a Planckian radiator of 2300 K (horizon).`;

/** The lights named by an option, each once, in the order given; the default where it was not given. */
export function lightsOf(args: Arguments, option: string, otherwise: readonly string[]): Outcome<readonly Light[]> {
  const names = [...new Set(args.values.get(option) ?? otherwise)];
  const lights = names.map((name) => lightByName(name));
  const issues = names.flatMap((name, index) => {
    if (lights[index]) return [];
    const near = nearestName(name, lightNames);
    return [usageIssue('unknown-light', `--${option}`, name, `one of ${lightNames.join(', ')}`, near === undefined ? undefined : `Did you mean ${near}?`)];
  });
  return { value: issues.length ? undefined : lights.filter((light) => light !== undefined), issues };
}
