import type { Cabin, Source, Specimen } from '../../cabin/cabin.ts';
import { cabinIndex } from '../../cabin/cabin-index.ts';
import type { Judgement, MeasurementRequest } from '../../harmony/judgement.ts';
import { partNames } from '../../harmony/names.ts';
import { geometryClass } from '../../readings/geometry-class.ts';
import type { GlossAngle, Reading } from '../../readings/reading.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { software } from '../software.ts';
import { lineId } from './line-id.ts';

/** A joint, or a check of the part by itself, that the readings of a line would decide. */
export interface DecidedJoint {
  /** Undefined where the part is held to its master or a cap. */
  readonly joint?: string;
  /** Name of the part on the other side, or what the part is held to. */
  readonly neighbour: string;
  readonly check: MeasurementRequest['check'];
  readonly chance: number | undefined;
  readonly reason: string;
}

/** Readings asked of one specimen on one instrument. */
export interface RequestLine {
  /** Stable: the same readings asked of the same specimen have the same id, whatever else is on the sheet. */
  readonly id: string;
  readonly part: string;
  readonly partName: string;
  readonly source: string;
  /** Empty where no specimen was measured yet. */
  readonly specimen: string;
  readonly lot?: string;
  readonly quantity: 'colour' | 'gloss' | 'texture';
  readonly angle?: GlossAngle;
  readonly geometry: string;
  readonly instrument: string;
  /** Rotations of every spot, 1 for none. */
  readonly rotations: number;
  /** Spots wanted in all under these conditions. */
  readonly spots: number;
  /** Of these, spots that are there. */
  readonly have: number;
  /** Names for the new spots, none of which the specimen has. */
  readonly newSpots: readonly string[];
  readonly decides: readonly DecidedJoint[];
  /** Expected number of checks that the line decides: the sum of the chances. Lines are ranked by it. */
  readonly expected: number;
}

/** What one supplier is asked to measure, the most telling line first. Plain JSON. */
export interface RequestSheet {
  readonly format: 'adjoin-requests';
  readonly version: 1;
  readonly software: typeof software;
  readonly cabin: { readonly id: string; readonly name: string; readonly colourway?: string; readonly phase?: string; readonly revision?: string };
  readonly stage: string;
  readonly asOf: string;
  readonly supplier: { readonly id: string; readonly name: string };
  readonly lines: readonly RequestLine[];
}

/**
 * The requests of a judgement by supplier, in the order of the cabin's register; suppliers of whom nothing is asked are left out. Requests that the same readings
 * answer are one line, with all joints that it may decide. Lines are ranked by the expected number of joints decided, ties by id.
 */
export function requestSheets(cabin: Cabin, judgement: Judgement, book: RuleBook): RequestSheet[] {
  const { id, name, colourway, phase, revision } = cabin;
  const lines = requestLines(cabin, judgement, book);
  const names = new Map(cabin.suppliers.map((supplier) => [supplier.id, supplier.name]));
  const order = [...new Set([...names.keys(), ...lines.map(({ supplier }) => supplier)])];
  return order.flatMap((supplier): RequestSheet[] => {
    const own = lines.filter((entry) => entry.supplier === supplier).map(({ line }) => line);
    if (own.length === 0) return [];
    return [{
      format: 'adjoin-requests', version: 1, software,
      cabin: { id, name, ...(colourway === undefined ? {} : { colourway }), ...(phase === undefined ? {} : { phase }), ...(revision === undefined ? {} : { revision }) },
      stage: judgement.stage, asOf: judgement.asOf,
      supplier: { id: supplier, name: names.get(supplier) ?? supplier },
      lines: own.sort((first, second) => second.expected - first.expected || (first.id < second.id ? -1 : 1)),
    }];
  });
}

interface OwnedLine {
  readonly supplier: string;
  readonly line: RequestLine;
}

function requestLines(cabin: Cabin, judgement: Judgement, book: RuleBook): OwnedLine[] {
  const groups = new Map<string, MeasurementRequest[]>();
  for (const request of judgement.requests) {
    const key = JSON.stringify([cabin.id, judgement.stage, request.part, request.source, request.specimen, request.quantity, request.geometry, request.instrument]);
    groups.set(key, [...(groups.get(key) ?? []), request]);
  }
  return [...groups].map(([key, requests]) => ownedLine(cabin, judgement, book, key, requests));
}

function ownedLine(cabin: Cabin, judgement: Judgement, book: RuleBook, key: string, requests: readonly MeasurementRequest[]): OwnedLine {
  const [first] = requests;
  const index = cabinIndex(cabin);
  const names = partNames(cabin.parts);
  const source = index.parts.get(first.part)?.sources.find(({ id }) => id === first.source);
  const specimen = index.specimens.get(first.specimen)?.specimen;
  const { quantity } = first;
  const angle = glossAngleOf(first.geometry);
  const spots = Math.max(...requests.map((request) => request.spots));
  const have = specimen === undefined ? 0 : spotsThere(cabin, specimen, first, quantity, angle);
  const results = new Map(judgement.joints.map((joint) => [joint.id, joint]));
  const decides = requests.map(({ joint, check, chance, reason }): DecidedJoint => {
    if (joint === undefined) return { neighbour: check === 'cap' ? 'the cap of its zone' : 'its own master', check: quantity, chance, reason };
    const other = results.get(joint)?.parts.find((part) => part !== first.part) ?? '';
    return { joint, neighbour: names.get(other) ?? other, check, chance, reason };
  });
  return {
    supplier: source?.supplier ?? first.supplier,
    line: {
      id: lineId(key), part: first.part, partName: names.get(first.part) ?? first.part, source: first.source, specimen: first.specimen,
      ...(specimen?.lot === undefined ? {} : { lot: specimen.lot.id }),
      quantity, ...(angle === undefined || quantity !== 'gloss' ? {} : { angle }),
      geometry: first.geometry, instrument: first.instrument,
      rotations: quantity === 'colour' ? rotationsWanted(book, source) : 1,
      spots, have, newSpots: freshNames(specimen, Math.max(1, spots - have)),
      decides, expected: decides.reduce((sum, { chance }) => sum + (chance ?? 0), 0),
    },
  };
}

const rotationsWanted = (book: RuleBook, source: Source | undefined): number =>
  book.materials.find(({ material }) => material === source?.material)?.wanted.rotations ?? 1;

function glossAngleOf(geometry: string): GlossAngle | undefined {
  const angle = Number(/^(\d+)°$/u.exec(geometry)?.[1]);
  return angle === 20 || angle === 60 || angle === 85 ? angle : undefined;
}

/** Spots of the specimen that were read as the line asks: this quantity, on this instrument, in this geometry or at this angle. */
function spotsThere(cabin: Cabin, specimen: Specimen, request: MeasurementRequest, quantity: RequestLine['quantity'], angle: GlossAngle | undefined): number {
  const { conditions, instruments } = cabinIndex(cabin);
  const asked = (reading: Reading): boolean => {
    const own = conditions.get(reading.conditions);
    const instrument = instruments.get(own?.instrument ?? '');
    if (reading.outlier === true || (instrument?.name ?? own?.instrument) !== request.instrument) return false;
    if (quantity === 'gloss') return reading.quantity === 'gloss' && reading.angle === angle;
    if (quantity === 'texture') return reading.quantity === 'texture';
    return reading.quantity !== 'gloss' && reading.quantity !== 'texture' && geometryClass(own?.geometry) === request.geometry;
  };
  const there = new Set(specimen.readings.filter(asked).map(({ spot }) => spot.name)).size;
  // "In one session" asks for all spots anew; so does anything else that counts every spot although enough are there.
  return there >= request.spots ? 0 : there;
}

/** Names for new spots: the next numbers that no spot of the specimen has. */
function freshNames(specimen: Specimen | undefined, count: number): string[] {
  const taken = new Set(specimen?.readings.map(({ spot }) => spot.name));
  const names: string[] = [];
  for (let number = 1; names.length < count; number++) if (!taken.has(String(number))) names.push(String(number));
  return names;
}
