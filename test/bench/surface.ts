import { gaussianFilterSteps, heightMap, measureSurfaceSteps, renderHeightsSteps, contrastSpectrumSteps, runSteps } from '../../src/texture/index.ts';
import { readSurface } from '../../src/formats/surface-reader.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { sdfBytes } from '../formats/support/surface-files.ts';

/** Times a large height map from file to parameters and visible texture: `node --import tsx test/bench/surface.ts [points on a side]`. */
const points = Number(process.argv[2] ?? 4000);
const spacing = 0.005;

const random = seededNumbers(1);
const noise = Float64Array.from({ length: points * points }, () => random() - 0.5);
const grain = runSteps(gaussianFilterSteps(noise, points, points, [spacing, spacing], 0.2));
const map = heightMap(points, points, [spacing, spacing], grain.map((height) => 200 * height));
const bytes = sdfBytes({ width: points, height: points, type: 3, size: 4, write: (view, at, index) => view.setFloat32(at, map.values[index]!, true) });

const cpu = (): number => process.cpuUsage().user / 1000;
function timed<T>(name: string, work: () => T): T {
  const [wall, own] = [performance.now(), cpu()];
  const result = work();
  process.stdout.write(`${name.padEnd(44)} ${(performance.now() - wall).toFixed(0).padStart(6)} ms   processor ${(cpu() - own).toFixed(0).padStart(6)} ms\n`);
  return result;
}

timed('read, binary SDF of 32 bit', () => readSurface(bytes));
timed('parameters, no form, no filter', () => runSteps(measureSurfaceSteps(map)).parameters.saUm);
const whole = timed('parameters, plane, S 0.025 mm, L 2.5 mm', () => runSteps(measureSurfaceSteps(map, { form: 'plane', sFilterMm: 0.025, lFilterMm: 2.5 })));
timed('parameters, second order, S 0.1 mm, L 0.8 mm', () => runSteps(measureSurfaceSteps(map, { form: 'second-order', sFilterMm: 0.1, lFilterMm: 0.8 })).parameters.saUm);
const luminance = timed('rendering under a lamp', () => runSteps(renderHeightsSteps(whole.surface)));
timed('spectrum of contrast', () => runSteps(contrastSpectrumSteps(luminance))?.rmsContrast);
process.stdout.write(`Sa ${whole.parameters.saUm?.toPrecision(8)} um, Sal ${whole.parameters.salMm?.toPrecision(6)} mm; largest resident size ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB with the input twice\n`);
