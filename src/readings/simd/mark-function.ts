import {
  add, addInt, and, andInt, atLeast, atMost, bitsUpInt, both, countDown, get, int, laneBits, load, loadInt, loadTwice, multiply, multiplyInt, orInt, pair as numbers, set, store, storeByte,
} from '../../wasm/wasm-code.ts';
import { intBytes, numberBytes } from '../../wasm/wasm-machine.ts';
import type { WasmFunction } from '../../wasm/wasm-module.ts';
import { testWidth } from '../draw-tests.ts';

const vectorBytes = 16;

/** In their order: addresses in bytes, and whole numbers. */
const parameters = [
  'normals', 'columnBytes', 'rank', 'factor', 'means', 'lights', 'testsOfLights', 'table', 'pair', 'lastPair', 'stride', 'pairs', 'scratch', 'marks',
] as const;

/**
 * `mark(...)`: of `pairs` antithetic pairs of draws, the first `pair` and each next one `stride` on (modulo `lastPair` + 1, a power of
 * two), the two draws in the two lanes: a byte for each test, of which bit 1 says that the first draw holds for sure, bit 2 the second,
 * and bits 4 and 8 that it may hold where the value itself is asked.
 */
export const mark: WasmFunction = (() => {
  const place = new Map<string, number>(parameters.map((name, index) => [name, index]));
  const at = (name: typeof parameters[number]): number => place.get(name) ?? 0;
  const integer = (index: number): number => parameters.length + index;
  const [column, normal, left, row, mean, testCounts, lightsLeft, test] = Array.from({ length: 8 }, (_, index) => integer(index));
  const vector = (index: number): number => integer(8) + index;
  const [dL, da, db, z, form] = Array.from({ length: 5 }, (_, index) => vector(index));
  const coefficient = (index: number): readonly number[] => loadTwice(get(test), index * numberBytes);
  const rowBytes = multiplyInt(get(at('rank')), int(numberBytes));
  const within = (low: number, high: number): readonly number[] => and(atLeast(get(form), coefficient(low)), atMost(get(form), coefficient(high)));
  const grow = (sum: number, address: readonly number[]): readonly number[] => set(sum, add(get(sum), multiply(loadTwice(address), get(z))));
  return {
    name: 'mark', parameters: parameters.length, integers: 8, vectors: 5,
    body: countDown(at('pairs'),
      set(column, addInt(get(at('normals')), multiplyInt(get(at('pair')), int(numberBytes)))),
      set(normal, get(at('scratch'))),
      set(left, get(at('rank'))),
      countDown(left,
        store(get(normal), multiply(loadTwice(get(column)), numbers(1, -1))),
        set(column, addInt(get(column), get(at('columnBytes')))),
        set(normal, addInt(get(normal), int(vectorBytes))),
      ),
      set(row, get(at('factor'))),
      set(mean, get(at('means'))),
      set(testCounts, get(at('testsOfLights'))),
      set(test, get(at('table'))),
      set(lightsLeft, get(at('lights'))),
      countDown(lightsLeft,
        set(dL, both(0)), set(da, both(0)), set(db, both(0)),
        set(normal, get(at('scratch'))),
        set(left, get(at('rank'))),
        countDown(left,
          set(z, load(get(normal))),
          grow(dL, get(row)),
          grow(da, addInt(get(row), rowBytes)),
          grow(db, addInt(addInt(get(row), rowBytes), rowBytes)),
          set(row, addInt(get(row), int(numberBytes))),
          set(normal, addInt(get(normal), int(vectorBytes))),
        ),
        set(row, addInt(addInt(get(row), rowBytes), rowBytes)),
        set(dL, add(loadTwice(get(mean)), get(dL))),
        set(da, add(loadTwice(get(mean), numberBytes), get(da))),
        set(db, add(loadTwice(get(mean), 2 * numberBytes), get(db))),
        set(mean, addInt(get(mean), int(3 * numberBytes))),
        set(left, loadInt(get(testCounts))),
        set(testCounts, addInt(get(testCounts), int(intBytes))),
        countDown(left,
          set(form, add(add(
            multiply(get(dL), add(add(add(multiply(coefficient(0), get(dL)), multiply(coefficient(3), get(da))), multiply(coefficient(4), get(db))), coefficient(6))),
            multiply(get(da), add(add(multiply(coefficient(1), get(da)), multiply(coefficient(5), get(db))), coefficient(7)))),
          multiply(get(db), add(multiply(coefficient(2), get(db)), coefficient(8))))),
          storeByte(get(at('marks')), orInt(laneBits(within(9, 10)), bitsUpInt(laneBits(within(11, 12)), 2))),
          set(at('marks'), addInt(get(at('marks')), int(1))),
          set(test, addInt(get(test), int(testWidth * numberBytes))),
        ),
      ),
      set(at('pair'), andInt(addInt(get(at('pair')), get(at('stride'))), get(at('lastPair')))),
    ),
  };
})();
