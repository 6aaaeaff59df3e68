import { serialiseCabin } from '../../src/cabin/index.ts';
import { buildCabin } from './build/cabin-builder.ts';
import { buildFirstSteps } from './build/first-steps.ts';
import { buildLotsOfADoor } from './build/lots-of-a-door.ts';
import { chalkColourway, slateColourway } from './plan/colourways.ts';
import { planted } from './plan/planted.ts';

/** The demo files by name, as text: the same bytes on every run. */
export function demoFiles(): Readonly<Record<string, string>> {
  return {
    'shuttle-slate.cabin.json': serialiseCabin(buildCabin(slateColourway)),
    'shuttle-chalk.cabin.json': serialiseCabin(buildCabin(chalkColourway)),
    'first-steps.cabin.json': serialiseCabin(buildFirstSteps()),
    'lots.cabin.json': serialiseCabin(buildLotsOfADoor()),
    'planted.json': `${JSON.stringify(planted, undefined, 2)}\n`,
  };
}
