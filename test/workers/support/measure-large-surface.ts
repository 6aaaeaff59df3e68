import { measureSurfaceFileSteps } from '../../../src/workers/measure-surface-file.ts';
import { runSteps } from '../../../src/texture/index.ts';

/**
 * Makes a binary height map (ISO 25178-71) of so many points a side, does what the worker does with it, and prints how many bytes the process held at
 * most: `node --import tsx test/workers/support/measure-large-surface.ts 4000`.
 */
const points = Number(process.argv[2]);
const bytes = new Uint8Array(81 + 4 * points * points);
bytes.set(new TextEncoder().encode('bISO-1.0invented  010120260900010120260900'));
const view = new DataView(bytes.buffer);
view.setUint16(42, points, true);
view.setUint16(44, points, true);
[5e-6, 5e-6, 1e-6, -1].forEach((value, index) => view.setFloat64(46 + 8 * index, value, true));
bytes[79] = 3;
for (let index = 0; index < points * points; index += 1) {
  const [x, y] = [index % points, Math.floor(index / points)];
  view.setFloat32(81 + 4 * index, 20 * Math.sin(x / 15) * Math.sin(y / 17) + ((x * 7919 + y * 104729) % 101) / 100, true);
}
const reply = runSteps(measureSurfaceFileSteps({ bytes, reading: {}, measuring: { measuring: { form: 'plane', sFilterMm: 0.025, lFilterMm: 2.5 } } }));
process.stdout.write(`${JSON.stringify({ kind: reply.kind, saUm: reply.kind === 'measured' ? reply.data?.parameters.saUm : undefined, bytes: process.resourceUsage().maxRSS * 1024 })}\n`);
