import type { PublishedCheck } from './published-check.ts';
import { adaptationChecks } from './verification/adaptation-checks.ts';
import { cielabChecks } from './verification/cielab-checks.ts';
import { interpolationChecks } from './verification/interpolation-checks.ts';
import { metamerismChecks } from './verification/metamerism-checks.ts';
import { weightChecks } from './verification/weight-checks.ts';
import { whitePointChecks } from './verification/white-point-checks.ts';

/** Every published value from spectrum to CIELAB, adaptation and metamerism, recomputed. */
export const verifySpectra = (): PublishedCheck[] => [
  ...weightChecks(), ...whitePointChecks(), ...interpolationChecks(), ...cielabChecks(), ...adaptationChecks(), ...metamerismChecks(),
];
