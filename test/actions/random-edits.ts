import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Action } from '../../src/actions/action.ts';
import type { Argument } from '../../src/actions/argument.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import { namedItems } from '../../src/actions/references.ts';
import { actions } from '../../src/actions/registry.ts';

/** Edits by chance: every choice is drawn from a list of whole numbers, used up one after the other and then begun again. */
export interface Draw {
  (below: number): number;
}

export function drawFrom(choices: readonly number[]): Draw {
  let at = 0;
  return (below) => {
    const choice = (choices[at % choices.length] ?? 0) + 7 * Math.floor(at / choices.length);
    at += 1;
    return below === 0 ? 0 : choice % below;
  };
}

const pick = <T>(items: readonly T[], draw: Draw): T | undefined => items[draw(items.length)];

/** Invented structures that fit the small cabin and the demo cabins alike in their shape. */
const structures: Readonly<Record<string, (cabin: Cabin, draw: Draw) => unknown>> = {
  added: (cabin, draw) => {
    const conditions = pick(cabin.conditions, draw)?.id;
    const choice = draw(3);
    if (choice === 0) return [{ quantity: 'gloss', spot: { name: `x${draw(9)}` }, conditions, angle: 60, gloss: 1 + draw(30) / 10 }];
    if (choice === 1) return [{ quantity: 'cielab', spot: { name: `x${draw(9)}` }, conditions, lab: [20 + draw(20), -1, 2], light: 'D65', observer: 10 }];
    return [{ quantity: 'texture', spot: { name: 't' }, conditions, parameters: { saUm: 5 + draw(20), salMm: 0.4 } }];
  },
  reading: (cabin, draw) => ({ quantity: 'gloss', spot: { name: 'y' }, conditions: pick(cabin.conditions, draw)?.id, angle: 60, gloss: 1 + draw(40) / 10 }),
  texture: (cabin, draw) => ({ quantity: 'texture', spot: { name: 's' }, conditions: pick(cabin.conditions, draw)?.id, parameters: { saUm: 3 + draw(9) } }),
  volumePrices: (_, draw) => [{ fromVolume: 0, piecePrice: 10 + draw(9) }, { fromVolume: 1000 * draw(3), piecePrice: 9 }],
  namedColours: () => [{ name: 'one', areaShare: 0.6 }, { name: 'two', areaShare: 0.4 }],
  shifts: (cabin, draw) => [{ part: pick(cabin.joints, draw)?.parts[draw(2)], dL: draw(9) - 4, dGloss: draw(3) }],
  roles: () => ['design quality'],
  file: (_, draw) => ({ id: 'f1', name: `file-${draw(9)}.csv`, sha256: String(draw(9)).repeat(64) }),
  entry: (cabin, draw) => ({ ...pick(cabin.instruments, draw), note: 'entered again' }),
  lights: (_, draw) => [{ light: 'D65', factor: 1, standing: 'required', basis: 'x' }, { light: draw(2) === 0 ? 'A' : 'D65', factor: 1 + draw(3), standing: 'shown', basis: 'x' }],
  components: (_, draw) => [{ component: 'dL', min: -1, max: draw(2) === 0 ? 1 : '0.5 + meanL / 100', basis: 'x' }],
  caps: (_, draw) => [{ id: `cap-${draw(3)}`, zone: 'dash', quantity: 'gloss', max: 1 + draw(5), angle: 60, basis: 'x' }],
  geometryOrder: (_, draw) => (draw(2) === 0 ? ['45:0', 'di:8'] : ['de:8', 'de:8']),
  readingsWanted: (_, draw) => [{ occasion: 'approval', wanted: `${1 + draw(9)} spots`, basis: draw(3) === 0 ? '' : 'x' }].slice(0, draw(3)),
  ruleBook: () => ({ format: 'adjoin-rules' }),
};

function valueOf(cabin: Cabin, key: string, argument: Argument, draw: Draw, part: string | undefined): unknown {
  const { kind, choices = [], range, refersTo } = argument;
  switch (kind) {
    case 'name': return key === 'id' && draw(2) === 0 ? `rule-${draw(9)}` : key === 'ruleBook' ? ['default', 'cmc', 'none'][draw(3)] : pick(['New', 'Dash lower', 'light-exposed', 'new', 'moulded', 'leather', 'EUR', 'D65', ' blank'], draw);
    case 'text': return pick(['', 'a note', 'two\nlines'], draw);
    case 'number': {
      const low = Math.max(range?.min ?? range?.above ?? 0, -10);
      const high = Math.min(range?.max ?? 100, low + 50);
      const value = low + ((high - low) * (draw(21) - 1)) / 18;
      return range?.whole === true ? Math.round(value) : value;
    }
    case 'choice': return pick(choices, draw);
    case 'flag': return draw(2) === 1;
    case 'date': return pick(['2030-01-01', '2031-02-28', '2031-09-01', '2031-02-30'], draw);
    case 'reference': return refersTo === undefined ? undefined : pick(namedItems(cabin, refersTo, part), draw)?.id ?? 'nobody';
    case 'references': return Array.from({ length: 2 + draw(2) }, () => pick(cabin.parts, draw)?.id ?? 'nobody');
    case 'point': return [draw(900), draw(900)];
    case 'points': return [[0, 0], [100 + draw(50), 0], [100, 90 + draw(50)], [0, 90]].slice(0, 2 + draw(3));
    case 'numbers': return ['readingSd', 'agreementSd'].includes(key) ? [0.1 + draw(9) / 10, 0.05, 0.06] : key === 'ratio' ? [0.7, 1.2 + draw(9) / 10] : [1, 5 + draw(9), 30, 60, 90, 100, 80, 40, 20];
    case 'places': return Array.from({ length: 1 + draw(2) }, () => draw(6));
    case 'formula': return [0.5 + draw(20) / 10, '0.7 * min(1.3, 1 + gapArcmin / 200)', 'max(0.1, meanGloss / 10)', '0.7 * gapMn', '-1'][draw(5)];
    case 'structure': return structures[key]?.(cabin, draw);
  }
}

/** Arguments by chance: most are of the right kind, some name what is not there or lie beyond a limit. */
export function randomValues(cabin: Cabin, action: Action, draw: Draw): Record<string, unknown> {
  const values: Record<string, unknown> = {};
  for (const [key, argument] of Object.entries(action.arguments)) {
    if (argument.presence !== 'needed' && draw(3) !== 0) continue;
    if (argument.presence === 'clearable' && draw(4) === 0) values[key] = null;
    else values[key] = valueOf(cabin, key, argument, draw, typeof values['part'] === 'string' ? values['part'] : undefined);
  }
  if (typeof values['specimen'] === 'string' && Array.isArray(values['readings'])) {
    const size = cabinIndex(cabin).specimens.get(values['specimen'])?.specimen.readings.length ?? 0;
    if (size > 0 && draw(8) !== 0) values['readings'] = (values['readings'] as number[]).map((place) => place % size);
  }
  return values;
}

/** The cabins that a row of edits by chance leads to; refused edits leave no trace. */
export function editsOf(cabin: Cabin, choices: readonly number[]): readonly Cabin[] {
  const draw = drawFrom(choices);
  const cabins: Cabin[] = [];
  let present = cabin;
  for (let step = 0; step < choices.length; step += 1) {
    const action = pick(actions, draw) as Action;
    const { value } = action.run(present, randomValues(present, action, draw));
    if (value === undefined || value === present) continue;
    present = value;
    cabins.push(value);
  }
  return cabins;
}
