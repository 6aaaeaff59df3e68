import {
  absolute, add, addInt, and, atLeast, atMost, bitsUpInt, both, countDown, divide, equal, exclusiveOr, fromWhole, get, greater, highLanes, int, less, load, loadTwice,
  lowLanes, multiply, or, select, set, squareRoot, store, subtract, wholeAt, wholeParts,
} from '../../../wasm/wasm-code.ts';
import type { Code } from '../../../wasm/wasm-code.ts';
import type { WasmFunction } from '../../../wasm/wasm-module.ts';
import { ciede2000Constants as constants } from '../ciede2000-constants.ts';
import { huePlacesPerQuarter } from '../hue-rotation-table.ts';

/** Bytes from one column of coordinates to the next: L*, a*, b* of the standards, then of the trials, then the differences. */
export const columnBytes = 8192;

/**
 * `ciede2000(at, twos, factors, table)`: addresses in bytes of the first column, of kL, kC, kH, and of the table of the rotation term; twice
 * `twos` pairs. The steps of `ciede2000Batch`, two pairs in each, in its order, so that both give the same numbers to the last bit.
 */
export const ciede2000: WasmFunction = (() => {
  const [at, twos, factors, table] = [0, 1, 2, 3];
  const [first, second] = [4, 5];
  let locals = second + 1;
  const body: Code[] = [];
  /** A vector that is worked out here and read wherever its code is named. */
  const kept = (value: Code): Code => {
    body.push(set(locals, value));
    locals += 1;
    return get(locals - 1);
  };
  const column = (place: number): Code => kept(load(get(at), place * columnBytes));
  const times = (factor: number, value: Code): Code => multiply(both(factor), value);
  const square = (value: Code): Code => multiply(value, value);
  const length = (x: Code, y: Code): Code => squareRoot(add(square(x), square(y)));
  const seventhShare = (chroma: Code): Code => {
    const squared = kept(square(chroma));
    const seventh = kept(multiply(multiply(multiply(squared, squared), squared), chroma));
    return squareRoot(divide(seventh, add(seventh, both(constants.power25to7))));
  };

  const [L1, a1, b1, L2, a2, b2] = [0, 1, 2, 3, 4, 5].map(column) as [Code, Code, Code, Code, Code, Code];
  const stretch = kept(subtract(both(1.5), times(0.5, seventhShare(kept(times(0.5, add(length(a1, b1), length(a2, b2))))))));
  const x1 = kept(multiply(stretch, a1));
  const x2 = kept(multiply(stretch, a2));
  const chroma1 = kept(length(x1, b1));
  const chroma2 = kept(length(x2, b2));
  const product = kept(multiply(chroma1, chroma2));
  const dot = kept(add(multiply(x1, x2), multiply(b1, b2)));
  const cross = kept(subtract(multiply(x1, b2), multiply(x2, b1)));

  const zero = both(0);
  const upper = (x: Code, y: Code): Code => or(greater(y, zero), and(equal(y, zero), greater(x, zero)));
  const upper1 = kept(upper(x1, b1));
  const toldByAngles = and(atMost(absolute(cross), times(constants.oppositeTolerance, product)), exclusiveOr(upper1, upper(x2, b2)));
  const growing = select(upper1, atLeast(cross, zero), toldByAngles);
  const wide = kept(less(dot, zero));
  const sign = kept(select(select(both(1), both(-1), growing), both(1), wide));
  const root = kept(squareRoot(product));
  const width = kept(squareRoot(times(2, add(product, absolute(dot)))));
  const scale = kept(divide(sign, multiply(root, width)));
  const grey = kept(less(product, both(constants.leastProduct)));
  const cosine = kept(select(both(1), multiply(select(subtract(multiply(b2, chroma1), multiply(b1, chroma2)), add(multiply(x1, chroma2), multiply(x2, chroma1)), wide), scale), grey));
  const sine = kept(select(zero, multiply(select(subtract(multiply(x1, chroma2), multiply(x2, chroma1)), add(multiply(b1, chroma2), multiply(b2, chroma1)), wide), scale), grey));
  const hueStep = select(zero, select(multiply(sign, width), multiply(multiply(times(2, cross), root), scale), wide), grey);

  const c2 = kept(subtract(multiply(times(2, cosine), cosine), both(1)));
  const s2 = kept(multiply(times(2, sine), cosine));
  const one = add(times(constants.cosine30, cosine), times(0.5, sine));
  const three = subtract(
    times(constants.cosine6, subtract(multiply(cosine, c2), multiply(sine, s2))),
    times(constants.sine6, add(multiply(sine, c2), multiply(cosine, s2))),
  );
  const four = add(times(constants.cosine63, subtract(multiply(times(2, c2), c2), both(1))), times(constants.sine63, multiply(times(2, s2), c2)));
  const t = subtract(add(add(subtract(both(1), times(0.17, one)), times(0.24, c2)), times(0.32, three)), times(0.2, four));
  const mean = kept(times(0.5, add(chroma1, chroma2)));
  const chromaWeight = kept(multiply(loadTwice(get(factors), 8), add(both(1), times(0.045, mean))));
  const hueWeight = kept(multiply(loadTwice(get(factors), 16), add(both(1), multiply(times(0.015, mean), t))));
  const fromMiddle = kept(subtract(times(0.5, add(L1, L2)), both(50)));
  const squared = kept(square(fromMiddle));
  const lightnessRoot = kept(squareRoot(add(both(20), squared)));
  const lightness = kept(divide(multiply(subtract(L2, L1), lightnessRoot), multiply(loadTwice(get(factors)), add(lightnessRoot, times(0.015, squared)))));
  const weights = kept(divide(both(1), multiply(chromaWeight, hueWeight)));
  const chroma = kept(multiply(multiply(subtract(chroma2, chroma1), hueWeight), weights));
  const hue = kept(multiply(multiply(hueStep, chromaWeight), weights));

  const share = kept(divide(cosine, add(absolute(cosine), absolute(sine))));
  const place = kept(times(huePlacesPerQuarter, select(add(both(3), share), subtract(both(1), share), less(sine, zero))));
  const whole = kept(wholeParts(place));
  const rest = kept(subtract(place, fromWhole(whole)));
  const ofLane = (lane: number): Code => addInt(get(table), bitsUpInt(wholeAt(whole, lane), 5));
  body.push(set(first, ofLane(0)), set(second, ofLane(1)));
  const [early1, early2] = [kept(load(get(first))), kept(load(get(second)))];
  const [late1, late2] = [kept(load(get(first), 16)), kept(load(get(second), 16))];
  const cubic = add(lowLanes(late1, late2), multiply(rest, highLanes(late1, late2)));
  const rotation = add(lowLanes(early1, early2), multiply(rest, add(highLanes(early1, early2), multiply(rest, cubic))));
  const turned = multiply(multiply(multiply(rotation, seventhShare(mean)), chroma), hue);
  body.push(
    store(get(at), squareRoot(add(add(add(square(lightness), square(chroma)), square(hue)), turned)), 6 * columnBytes),
    set(at, addInt(get(at), int(16))),
  );
  return { name: 'ciede2000', parameters: 4, integers: 2, vectors: locals - second - 1, body: countDown(twos, ...body) };
})();
