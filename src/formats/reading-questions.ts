import { geometries } from '../readings/reading.ts';
import type { FoundConditions, FoundGeometry, PartialGeometry, Question, ReadingRecord, ReadingSet } from './reading-set.ts';
import { partialGeometries } from './reading-set.ts';

const completions: Readonly<Record<PartialGeometry, readonly string[]>> = {
  '45:0': ['45a:0', '45c:0', '45x:0', 'unknown'],
  '0:45': ['0:45a', '0:45c', '0:45x', 'unknown'],
  'd:8': ['di:8', 'de:8', 'unknown'],
  '8:d': ['8:di', '8:de', 'unknown'],
};

/** Whether a stated geometry still leaves a choice open. */
export const isPartialGeometry = (geometry: FoundGeometry): geometry is PartialGeometry => partialGeometries.some((name) => name === geometry);

/** The geometries that a found one may turn out to be. */
export const geometryChoices = (geometry: FoundGeometry | undefined): readonly string[] =>
  (geometry === undefined ? geometries : isPartialGeometry(geometry) ? completions[geometry] : [geometry]);

const isColour = ({ data }: ReadingRecord): boolean => data.quantity === 'spectrum' || data.quantity === 'cielab' || data.quantity === 'difference';

interface Tally {
  readonly question: Omit<Question, 'records' | 'line'>;
  records: number;
  line: number | undefined;
}

/**
 * What the readings of a file leave open. Required are the scale of reflectances, the geometry of colour readings, the light and
 * observer of CIELAB values, the master of differences, the instrument, and whether repeated rows of a specimen are different
 * spots; aperture, UV state and number of averaged readings may stay unknown.
 */
export function questionsOf({ conditions, records }: Pick<ReadingSet, 'conditions' | 'records'>): Question[] {
  const tallies = new Map<string, Tally>();
  const ask = (record: ReadingRecord, question: Omit<Question, 'records' | 'line'>): void => {
    const tally = tallies.get(question.id);
    if (tally === undefined) tallies.set(question.id, { question, records: 1, line: record.line });
    else tally.records += 1;
  };
  for (const record of records) {
    askOfData(record, (question) => ask(record, question));
    askOfConditions(record, conditions[record.conditions] ?? {}, (question) => ask(record, question));
  }
  for (const record of unnamedRepeats(records)) {
    ask(record, {
      id: 'spots', topic: 'spots', required: true, choices: ['different spots', 'one spot'],
      text: 'Several readings of one specimen have no name of a spot. Are they different spots, or repeats on one spot?',
    });
  }
  return [...tallies.values()].map(({ question, records: count, line }) => ({ ...question, records: count, ...(line === undefined ? {} : { line }) }));
}

type Ask = (question: Omit<Question, 'records' | 'line'>) => void;

function askOfData({ data, averagedFrom }: ReadingRecord, ask: Ask): void {
  if (data.quantity === 'spectrum' && data.scaleUndeclared === true) {
    ask({ id: 'scale', topic: 'scale', required: true, choices: ['fraction', 'percent'], text: 'The file does not say whether reflectances are fractions (1 is the perfect diffuser) or per cent. Which are they?' });
  }
  if (data.quantity === 'cielab' || data.quantity === 'difference') {
    if (data.light === undefined) ask({ id: 'light', topic: 'light', required: true, text: 'Under which light were the CIELAB values computed?' });
    if (data.observer === undefined) ask({ id: 'observer', topic: 'observer', required: true, choices: ['2', '10'], text: 'For which standard observer were the CIELAB values computed?' });
  }
  if (data.quantity === 'difference' && data.master === undefined) ask({ id: 'master', topic: 'master', required: true, text: 'Which master are the differences to?' });
  if (averagedFrom === undefined) {
    ask({ id: 'averaged', topic: 'averaged', required: false, text: 'Is a row the mean of several readings on its spot? Of how many? 1 where it is a single one.' });
  }
}

function askOfConditions(record: ReadingRecord, found: FoundConditions, ask: Ask): void {
  const index = record.conditions;
  const about = [found.instrument, found.geometry].filter((word) => word !== undefined).join(', ');
  const where = about === '' ? '' : ` (${about})`;
  if (isColour(record)) {
    if (found.geometry === undefined || isPartialGeometry(found.geometry)) {
      const choices = geometryChoices(found.geometry);
      const text = found.geometry === undefined
        ? 'In which geometry were the colours measured?'
        : `The file says ${found.geometry}${found.geometry.includes('d') ? ' and not whether the specular part is included (di) or excluded (de)' : ' and not how the 45 degree light is arranged: annular (a), circumferential (c) or from one direction (x)'}. Which is it?`;
      ask({ id: `geometry:${index}`, topic: 'geometry', required: true, choices, conditions: index, text: found.geometry === undefined ? text.replace('?', `${where}?`) : text });
    }
    if (found.uv === undefined) {
      ask({ id: `uv:${index}`, topic: 'uv', required: false, choices: ['included', 'excluded', 'adjusted', 'unknown'], conditions: index, text: `Did the light of the instrument include ultraviolet${where}?` });
    }
    if (found.apertureMm === undefined) ask({ id: `aperture:${index}`, topic: 'aperture', required: false, conditions: index, text: `What is the diameter of the measured aperture in mm${where}?` });
  }
  if (found.instrument === undefined) ask({ id: `instrument:${index}`, topic: 'instrument', required: true, conditions: index, text: 'Which instrument were these readings taken with?' });
}

/** Records that share everything with another one and have no spot. */
function unnamedRepeats(records: readonly ReadingRecord[]): ReadingRecord[] {
  const groups = new Map<string, ReadingRecord[]>();
  for (const record of records) {
    if (record.spot !== undefined) continue;
    const { part, source, supplier, specimen, lot, stage, colour, rotationDeg, conditions, data } = record;
    const detail = data.quantity === 'gloss' ? [data.angle, data.direction] : data.quantity === 'cielab' || data.quantity === 'difference' ? [data.light, data.observer] : [];
    const key = JSON.stringify([part, source, supplier, specimen, lot, stage, colour, rotationDeg, conditions, data.quantity, ...detail]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [record]);
    else group.push(record);
  }
  return [...groups.values()].flatMap((group) => (group.length > 1 ? group : []));
}
