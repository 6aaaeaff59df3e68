import { serialiseCabin } from '../../src/cabin/index.ts';
import { buildCabin } from './build/cabin-builder.ts';
import { chalkColourway, slateColourway } from './plan/colourways.ts';

/** The demo files by name, as text: the same bytes on every run. */
export function demoFiles(): Readonly<Record<string, string>> {
  return {
    'shuttle-slate.cabin.json': serialiseCabin(buildCabin(slateColourway)),
    'shuttle-chalk.cabin.json': serialiseCabin(buildCabin(chalkColourway)),
  };
}
