import { lightByName, lightNames, userLight } from '../../src/colour/index.ts';
import type { Light } from '../../src/colour/index.ts';
import type { Cabin, UserLight } from '../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../src/harmony/judgement.ts';
import { remembered } from './remembered.ts';

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

type Standings = ReadonlyMap<string, 'required' | 'shown'>;

const alike = new Map<string, Standings>();
const unused: Standings = new Map();

/** What several say together; required wins over shown. One object for all that say the same, as most joints do. */
function joined(all: Iterable<Iterable<readonly [light: string, standing: 'required' | 'shown']>>): Standings {
  const found = new Map<string, 'required' | 'shown'>();
  for (const each of all) for (const [light, standing] of each) if (found.get(light) !== 'required') found.set(light, standing);
  const key = JSON.stringify([...found]);
  const same = alike.get(key) ?? found;
  alike.set(key, same);
  return same;
}

const ofJoint = remembered(({ checks }: JointResult) => joined(checks.map(({ lights }) => lights.map(({ light, standing }) => [light, standing] as const))));
const ofJoints = remembered((joints: readonly JointResult[]) => joined(new Set(joints.map(ofJoint))));

/** How the rule of any joint uses a light. */
const standings = (judgement: Judgement | undefined): Standings => (judgement === undefined ? unused : ofJoints(judgement.joints));

/** The lights on offer, in groups, each with what the rules make of it; the same object for the same lights. */
export const lightGroups = (cabin: Cabin | undefined, judgement: Judgement | undefined): readonly LightGroup[] => groupsWith(standings(judgement))(cabin?.lights ?? none);

const none: readonly UserLight[] = [];
const groupsWith = remembered((used: Standings) => remembered((lights: readonly UserLight[]) => groupsOf(lights, used)));

function groupsOf(lights: readonly UserLight[], used: Standings): readonly LightGroup[] {
  const offer = (name: string, words: string): OfferedLight[] => {
    const light = findLight(name, lights);
    return light === undefined ? [] : [{ name, light, about: words, standing: used.get(name) }];
  };
  const published = groups.map(([name, belongs]) => ({
    name,
    lights: lightNames.filter(belongs).flatMap((light) => offer(light, about[light] ?? '')),
  }));
  const own = lights.flatMap((light) => offer(light.id, light.name));
  return own.length === 0 ? published : [...published, { name: 'Own', lights: own }];
}

/** The lights the rules judge under, then those they only show: the way of the sweep. */
export const sweepLights = (judgement: Judgement | undefined): readonly string[] => inOrder(standings(judgement));

const inOrder = remembered((used: Standings): readonly string[] => {
  const names = [...used.keys()];
  return [...names.filter((name) => used.get(name) === 'required'), ...names.filter((name) => used.get(name) === 'shown')];
});
