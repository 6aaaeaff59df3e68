import type { Lab } from '../../quantities.ts';
import type { Schema } from '../schema/index.ts';
import { number, tuple } from '../schema/index.ts';

/** CIELAB coordinates; fluorescent samples may pass L* 100 a little. */
export const labShape = (): Schema<Lab> =>
  tuple<Lab>('CIELAB coordinates L*, a*, b*', number({ min: 0, max: 120 }), number({ min: -200, max: 200 }), number({ min: -200, max: 200 }));

/** A difference of CIELAB coordinates, trial minus standard. */
export const labDifferenceShape = (): Schema<Lab> => {
  const component = number({ min: -200, max: 200 });
  return tuple<Lab>('a CIELAB difference dL*, da*, db*', component, component, component);
};
