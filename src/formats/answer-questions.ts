import { highestReflectance } from '../cabin/shapes/reflectances.ts';
import type { Issue, Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import type { Geometry, UvState } from '../readings/reading.ts';
import { defined, withQuestions } from './reading-collector.ts';
import { readLight } from './condition-words.ts';
import type { FoundConditions, FoundData, Question, ReadingRecord, ReadingSet } from './reading-set.ts';

/** Answers by the question's id, or by its topic for all conditions alike. Remembered with a mapping, they serve the next file. */
export type Answers = Readonly<Record<string, string>>;

const answerTo = (question: Pick<Question, 'id' | 'topic'>, answers: Answers): string | undefined =>
  [question.id, question.topic].flatMap((key) => (Object.hasOwn(answers, key) ? [answers[key]] : []))[0];

/**
 * The set with the answers put in and the questions that remain. Answers to what was not asked are passed over, so that one
 * mapping serves many files; an answer that cannot be is an issue and leaves no value.
 */
export function answerQuestions(set: ReadingSet, answers: Answers): Outcome<ReadingSet> {
  const issues: Issue[] = [];
  const given = new Map<string, string>();
  for (const question of set.questions) {
    const answer = answerTo(question, answers)?.trim();
    if (answer === undefined) continue;
    const fault = faultOf(question, answer);
    if (fault === undefined) given.set(question.id, answer);
    else issues.push({ code: 'bad-answer', severity: 'error', path: question.id, found: JSON.stringify(answer.slice(0, 60)), expected: fault });
  }
  if (hasErrors(issues)) return { value: undefined, issues };
  const conditions = set.conditions.map((found, index) => answeredConditions(found, index, given));
  const records = answeredSpots(set.records.map((record) => answeredRecord(record, given, issues)), given.get('spots'));
  return { value: hasErrors(issues) ? undefined : withQuestions({ ...set, conditions, records }), issues };
}

function faultOf({ topic, choices }: Question, answer: string): string | undefined {
  if (choices !== undefined) return choices.includes(answer) ? undefined : `one of ${choices.join(', ')}`;
  if (topic === 'light') return readLight(answer).light === undefined ? 'the name of a light' : undefined;
  const value = Number(answer.replace(',', '.'));
  if (topic === 'aperture') return value > 0 && value <= 1000 ? undefined : 'a diameter above 0 and up to 1000 mm';
  if (topic === 'averaged') return Number.isInteger(value) && value >= 1 && value <= 10_000 ? undefined : 'a whole number from 1 to 10000';
  return answer === '' || answer.length > 200 ? 'a name of up to 200 characters' : undefined;
}

function answeredConditions(found: FoundConditions, index: number, given: ReadonlyMap<string, string>): FoundConditions {
  const aperture = given.get(`aperture:${index}`);
  return defined({
    ...found,
    instrument: given.get(`instrument:${index}`) ?? found.instrument,
    // The choices of these two questions are the words of the types.
    geometry: (given.get(`geometry:${index}`) as Geometry | undefined) ?? found.geometry,
    uv: (given.get(`uv:${index}`) as UvState | undefined) ?? found.uv,
    apertureMm: aperture === undefined ? found.apertureMm : Number(aperture.replace(',', '.')),
  });
}

function answeredRecord(record: ReadingRecord, given: ReadonlyMap<string, string>, issues: Issue[]): ReadingRecord {
  const averaged = given.get('averaged');
  const data = answeredData(record, given, issues);
  return { ...record, data, ...(averaged === undefined || record.averagedFrom !== undefined ? {} : { averagedFrom: Number(averaged) }) };
}

function answeredData({ data, line }: ReadingRecord, given: ReadonlyMap<string, string>, issues: Issue[]): FoundData {
  if (data.quantity === 'spectrum') {
    const scale = given.get('scale');
    if (data.scaleUndeclared !== true || scale === undefined) return data;
    const divisor = scale === 'percent' ? 100 : 1;
    const over = data.values.find((value) => value / divisor > highestReflectance);
    if (over !== undefined && issues.length < 1000) {
      issues.push({
        code: 'out-of-range', severity: 'error', ...(line === undefined ? {} : { line }), found: String(over),
        expected: `values from 0 to ${highestReflectance * divisor}, as the scale was said to be ${scale}`,
      });
    }
    return defined({ ...data, scaleUndeclared: undefined, values: data.values.map((value) => value / divisor) });
  }
  if (data.quantity !== 'cielab' && data.quantity !== 'difference') return data;
  const light = given.get('light');
  const observer = given.get('observer');
  const viewed = {
    light: data.light ?? (light === undefined ? undefined : readLight(light).light),
    observer: data.observer ?? (observer === undefined ? undefined : observer === '2' ? 2 as const : 10 as const),
  };
  return data.quantity === 'cielab' ? defined({ ...data, ...viewed }) : defined({ ...data, ...viewed, master: data.master ?? given.get('master') });
}

/** Readings without a spot get one: numbers from 1 within their specimen where they are different spots, the same where they are one. */
function answeredSpots(records: readonly ReadingRecord[], answer: string | undefined): readonly ReadingRecord[] {
  if (answer === undefined) return records;
  const counts = new Map<string, number>();
  return records.map((record) => {
    if (record.spot !== undefined) return record;
    const { part, source, supplier, specimen, lot, stage, colour, rotationDeg, conditions, data } = record;
    const key = JSON.stringify([part, source, supplier, specimen, lot, stage, colour, rotationDeg, conditions, data.quantity,
      data.quantity === 'gloss' ? [data.angle, data.direction] : 'light' in data ? [data.light, data.observer] : []]);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return { ...record, spot: { name: answer === 'one spot' ? '1' : String(count) } };
  });
}
