import type { Watch } from '../plan/index.ts';
import type { Io } from './verb.ts';

/** How a plan is followed from the command line. */
export const workWatch = ({ clock, progress }: Io): Watch => ({ ...(clock === undefined ? {} : { clock }), ...(progress === undefined ? {} : { progress }) });
