import { lightByName, lightNames, userLight } from '../../src/colour/index.ts';
import type { Light } from '../../src/colour/index.ts';
import type { Cabin, UserLight } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';

export interface OfferedLight {
  readonly name: string;
  readonly light: Light;
  /** What it stands for, in a few words. */
  readonly about: string;
  /** How the rule book uses it, if it does. */
  readonly standing: 'required' | 'shown' | undefined;
}

export interface LightGroup {
  readonly name: string;
  readonly lights: readonly OfferedLight[];
}

const about: Readonly<Record<string, string>> = {
  D65: 'average daylight, 6500 K', D50: 'horizon daylight, 5000 K', C: 'daylight, obsolete',
  ID65: 'daylight through glass', ID50: 'warm daylight through glass',
  A: 'tungsten, 2856 K', P2300: 'sunset, 2300 K',
  FL2: 'cool white tube', FL7: 'broad daylight tube', FL11: 'narrow-band tube, 4000 K', 'FL3.15': 'daylight simulator tube',
  'LED-B1': 'blue-pumped, 2730 K', 'LED-B2': 'blue-pumped, 3000 K', 'LED-B3': 'blue-pumped, 4100 K', 'LED-B4': 'blue-pumped, 5100 K',
  'LED-B5': 'blue-pumped, 6600 K', 'LED-BH1': 'blue and red, 2850 K', 'LED-RGB1': 'red, green, blue, 2840 K',
  'LED-V1': 'violet-pumped, 2720 K', 'LED-V2': 'violet-pumped, 4070 K',
};

const groups: readonly (readonly [string, (name: string) => boolean])[] = [
  ['Daylight', (name) => /^(D\d|C$|ID)/.test(name)],
  ['Glow', (name) => name === 'A' || /^P\d/.test(name)],
  ['Tubes', (name) => name.startsWith('FL')],
  ['LED', (name) => name.startsWith('LED')],
];

/** Weights are cached by the light's identity, so a user's light is made once. */
const made = new WeakMap<UserLight, Light>();

/** Every light by its name: the published ones and the user's own of this cabin. */
export function findLight(name: string, own: readonly UserLight[] = []): Light | undefined {
  const mine = own.find((light) => light.id === name);
  if (mine === undefined) return lightByName(name);
  const light = made.get(mine) ?? userLight(mine.id, mine.startNm, mine.stepNm, mine.values);
  made.set(mine, light);
  return light;
}

/** How the rule of any joint uses a light; required wins over shown. */
function standings(judgement: Judgement | undefined): ReadonlyMap<string, 'required' | 'shown'> {
  const found = new Map<string, 'required' | 'shown'>();
  for (const joint of judgement?.joints ?? []) {
    for (const check of joint.checks) {
      for (const { light, standing } of check.lights) if (found.get(light) !== 'required') found.set(light, standing);
    }
  }
  return found;
}

/** The lights on offer, in groups, each with what the rules make of it. */
export function lightGroups(cabin: Cabin | undefined, judgement: Judgement | undefined): LightGroup[] {
  const used = standings(judgement);
  const offer = (name: string, words: string): OfferedLight[] => {
    const light = findLight(name, cabin?.lights);
    return light === undefined ? [] : [{ name, light, about: words, standing: used.get(name) }];
  };
  const published = groups.map(([name, belongs]) => ({
    name,
    lights: lightNames.filter(belongs).flatMap((light) => offer(light, about[light] ?? '')),
  }));
  const own = (cabin?.lights ?? []).flatMap((light) => offer(light.id, light.name));
  return own.length === 0 ? published : [...published, { name: 'Own', lights: own }];
}

/** The lights the rules judge under, then those they only show: the way of the sweep. */
export function sweepLights(judgement: Judgement | undefined): string[] {
  const used = standings(judgement);
  const inOrder = [...used.keys()];
  return [...inOrder.filter((name) => used.get(name) === 'required'), ...inOrder.filter((name) => used.get(name) === 'shown')];
}
