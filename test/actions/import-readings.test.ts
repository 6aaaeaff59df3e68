import { describe, expect, test } from 'vitest';
import { importReadings } from '../../src/actions/import-readings.ts';
import type { ImportMapping } from '../../src/actions/import-mapping.ts';
import type { Cabin, Specimen } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { cabinReadings } from '../../src/formats/cabin-readings.ts';
import { readText } from '../../src/formats/index.ts';
import type { ReadingSet } from '../../src/formats/index.ts';
import { smallCabin } from '../support/small-cabin.ts';

// Expected places and values are read off the tables below and the small cabin, by hand.

const cabin: Cabin = smallCabin();
const wavelengths = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
const spectrum = (value: number): string => wavelengths.map(() => String(value)).join(',');
const set = (text: string, name = 'april.csv'): ReadingSet => {
  const { value, issues } = readText({ text, file: name, sha256: `${'0'.repeat(60)}${String(text.length).padStart(4, '0')}` });
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return value;
};
const specimenOf = (result: Cabin | undefined, id: string): Specimen | undefined => [...(result?.masters ?? []), ...(result?.parts ?? []).flatMap((part) => part.sources.flatMap((source) => source.specimens))].find((one) => one.id === id);
const codes = (text: string, mapping: ImportMapping = {}): string[] => importReadings(cabin, set(text), mapping).issues.filter(({ severity }) => severity === 'error').map(({ code }) => code);

const header = `# scale: fraction\n# geometry: 45a:0\n# instrument: bench\npart,specimen,spot,${wavelengths.join(',')}\n`;

describe('taking a file over into a cabin', () => {
  test('new specimens of a part with one source, conditions and instrument made, the file recorded', () => {
    const { value, issues } = importReadings(cabin, set(`${header}Door left,X-1,a,${spectrum(0.05)}\ndoor-left,X-1,b,${spectrum(0.051)}\n`), { newSpecimens: 'series part' });
    expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(value).toMatchObject({ file: 'april', readings: 2, skipped: 0, newSpecimens: ['X-1'], newInstruments: ['bench'] });
    const specimen = specimenOf(value?.cabin, 'X-1');
    expect(specimen).toMatchObject({ kind: 'series part' });
    expect(specimen?.readings.map((reading) => [reading.quantity, reading.spot.name, reading.file, reading.row])).toEqual([['spectrum', 'a', 'april', 1], ['spectrum', 'b', 'april', 2]]);
    expect(value?.cabin.parts.find(({ id }) => id === 'door-left')?.sources[0]?.specimens.map(({ id }) => id)).toEqual(['do-1', 'X-1']);
    const conditions = value?.cabin.conditions.find(({ id }) => id === specimen?.readings[0]?.conditions);
    expect(conditions).toMatchObject({ instrument: 'bench', geometry: '45a:0' });
    expect(value?.cabin.instruments.find(({ id }) => id === 'bench')).toEqual({ id: 'bench', name: 'bench', kind: 'spectrophotometer' });
    expect(value?.cabin.files?.at(-1)).toMatchObject({ id: 'april', name: 'april.csv' });
    // The whole document passes the one door, and what did not change is the same object.
    expect(restoreCabin(value?.cabin).value).toEqual(value?.cabin);
    expect(value?.cabin.parts[0]).toBe(cabin.parts[0]);
    expect(value?.cabin.joints).toBe(cabin.joints);
  });

  test('a specimen of the cabin needs no part and keeps its readings; its stage need not be said', () => {
    const before = specimenOf(cabin, 'dl-3')?.readings ?? [];
    const { value } = importReadings(cabin, set(`specimen,spot,gloss 60,instrument\ndl-3,s1,2.5,shine\n`));
    const specimen = specimenOf(value?.cabin, 'dl-3');
    expect(specimen?.readings.slice(0, before.length)).toEqual(before);
    expect(specimen?.readings.slice(before.length)).toMatchObject([{ quantity: 'gloss', angle: 60, gloss: 2.5, spot: { name: 's1' } }]);
    expect(value?.cabin.instruments.find(({ id }) => id === 'shine')?.kind).toBe('glossmeter');
  });

  test('differences come with their master; a master of the file is recorded', () => {
    const text = '# light: D65/10\n# geometry: de:8\n# instrument: bench\npart,specimen,kind,master,L,a,b,dL,da,db\n,M-9,master,,27,0,-2,,,\ndoor-left,X-2,plaque,M-9,,,,0.5,0.25,0\n';
    const { value } = importReadings(cabin, set(text));
    expect(specimenOf(value?.cabin, 'M-9')).toMatchObject({ kind: 'master', readings: [{ quantity: 'cielab', lab: [27, 0, -2], light: 'D65', observer: 10 }] });
    expect(value?.cabin.masters?.map(({ id }) => id)).toContain('M-9');
    expect(specimenOf(value?.cabin, 'X-2')?.readings).toMatchObject([{ quantity: 'difference', difference: [0.5, 0.25, 0], master: 'M-9' }]);
    expect(codes(text.replace(',M-9,master', ',M-8,master'))).toEqual(['unknown-master']);
  });

  test('the mapping places names, answers questions and leaves out', () => {
    const text = `part,specimen,${wavelengths.join(',')}\nTüre,P1,${spectrum(5)}\nTüre,P1,${spectrum(6)}\nBlende,P2,${spectrum(7)}\n`;
    const mapping: ImportMapping = {
      answers: { scale: 'percent', geometry: 'di:8', instrument: 'Sphere 2', spots: 'different spots', uv: 'excluded' }, parts: { 'Türe': 'dash-lower' }, specimens: { P1: { source: 'alt', kind: 'plaque' }, P2: { skip: true } },
    };
    const { value } = importReadings(cabin, set(text), mapping);
    expect(value).toMatchObject({ readings: 2, skipped: 1, newSpecimens: ['P1'] });
    expect(value?.cabin.parts.find(({ id }) => id === 'dash-lower')?.sources.find(({ id }) => id === 'alt')?.specimens.at(-1)).toMatchObject({
      id: 'P1', readings: [{ spot: { name: '1' }, values: wavelengths.map(() => 5 / 100) }, { spot: { name: '2' }, values: wavelengths.map(() => 6 / 100) }],
    });
    // The same mapping serves the next file.
    const next = value && importReadings(value.cabin, set(`part,specimen,${wavelengths.join(',')}\nTüre,P1,${spectrum(9)}\n`, 'may.csv'), mapping);
    expect(next?.value).toMatchObject({ readings: 1, newSpecimens: [], newInstruments: [] });
    expect(specimenOf(next?.value?.cabin, 'P1')?.readings).toHaveLength(3);
  });

  test('a named colour goes with its reading where the source has it, and is refused where it has not', () => {
    const table = set(`# scale: fraction\n# geometry: 45a:0\n# instrument: bench\npart,specimen,spot,named colour,${wavelengths.join(',')}\nDoor left,X-9,a,ground,${spectrum(0.05)}\nDoor left,X-9,b,line,${spectrum(0.2)}\n`);
    expect(table.records.map(({ colour }) => colour)).toEqual(['ground', 'line']);
    const refused = importReadings(cabin, table, { newSpecimens: 'plaque' });
    expect(refused.value).toBeUndefined();
    expect(refused.issues.map(({ code }) => code)).toContain('unknown-colour');
    const named = [{ name: 'ground', areaShare: 0.8 }, { name: 'line', areaShare: 0.2 }];
    const patterned: Cabin = { ...cabin, parts: cabin.parts.map((part) => (part.id !== 'door-left' ? part : { ...part, sources: part.sources.map((source) => ({ ...source, surface: 'patterned' as const, namedColours: named })) })) };
    const taken = importReadings(patterned, table, { newSpecimens: 'plaque' });
    expect(specimenOf(taken.value?.cabin, 'X-9')?.readings.map(({ colour }) => colour)).toEqual(['ground', 'line']);
  });

  test('a name that another part has for a specimen is kept apart', () => {
    const { value } = importReadings(cabin, set('part,specimen,spot,gloss 60,instrument\nconsole,do-1,a,80,shine\n'), { newSpecimens: 'plaque' });
    expect(value?.newSpecimens).toEqual(['console do-1']);
    expect(specimenOf(value?.cabin, 'do-1')).toEqual(specimenOf(cabin, 'do-1'));
  });

  test('lights of a file', () => {
    const light = set('<IESTM2714 xmlns="http://www.ies.org/iestm2714"><Header><Description>D65</Description></Header><SpectralDistribution><SpectralQuantity>flux</SpectralQuantity><SpectralData wavelength="400">1</SpectralData><SpectralData wavelength="700">2</SpectralData></SpectralDistribution></IESTM2714>'
      .replace('<SpectralData wavelength="400">1</SpectralData>', Array.from({ length: 30 }, (_, index) => `<SpectralData wavelength="${400 + 10 * index}">1</SpectralData>`).join('')));
    const { value } = importReadings(cabin, light);
    // D65 is a built-in light, so the file's light of this name gets another id.
    expect(value?.newLights).toEqual(['D65-2']);
    expect(restoreCabin(value?.cabin).value).toEqual(value?.cabin);
  });
});

describe('nothing is taken over', () => {
  test.each([
    ['an unanswered question', `part,specimen,spot,${wavelengths.join(',')}\ndoor-left,X,a,${spectrum(0.05)}\n`, {}, ['question-open', 'question-open', 'question-open']],
    ['an answer that cannot be', `part,specimen,spot,${wavelengths.join(',')}\ndoor-left,X,a,${spectrum(0.05)}\n`, { answers: { scale: 'some' } }, ['bad-answer']],
    ['an unknown part', 'part,specimen,spot,gloss 60,instrument\nboot,X,a,2,shine\n', { newSpecimens: 'plaque' }, ['unknown-part']],
    ['a specimen without a part', 'specimen,spot,gloss 60,instrument\nX,a,2,shine\n', { newSpecimens: 'plaque' }, ['part-needed']],
    ['a part with two sources', 'part,specimen,spot,gloss 60,instrument\ndash-lower,X,a,2,shine\n', { newSpecimens: 'plaque' }, ['source-needed']],
    ['a supplier that has no source of the part', 'part,supplier,specimen,spot,gloss 60,instrument\ndash-lower,nobody,X,a,2,shine\n', { newSpecimens: 'plaque' }, ['unknown-source']],
    ['a new specimen of no kind', 'part,specimen,spot,gloss 60,instrument\ndoor-left,X,a,2,shine\n', {}, ['specimen-kind-needed']],
    ['an instrument that the mapping invents', 'part,specimen,spot,gloss 60,instrument\ndoor-left,X,a,2,shine\n', { newSpecimens: 'plaque', instruments: { shine: 'nothing' } }, ['unknown-instrument']],
    ['one good row and one bad', 'part,specimen,spot,gloss 60,instrument\ndoor-left,X,a,2,shine\nboot,X,a,2,shine\n', { newSpecimens: 'plaque' }, ['unknown-part']],
    ['spectra unlike those of the specimen', `# scale: fraction\n# geometry: 45c:0\n# aperture mm: 8\n# uv: excluded\n# instrument: bench\nspecimen,spot,${[...wavelengths, 710].join(',')}\ndo-1,z,${spectrum(0.1)},0.1\n`, { instruments: { bench: 'spectro-a' } }, ['unequal-spectra']],
  ] as const)('%s', (_name, text, mapping: ImportMapping, expected) => {
    const { value, issues } = importReadings(cabin, set(text), mapping);
    expect(value).toBeUndefined();
    expect(issues.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual(expected);
    expect(issues.every(({ file }) => file === 'april.csv')).toBe(true);
  });

  test('a file is taken once, by its digest', () => {
    const file = set('part,specimen,spot,gloss 60,instrument\ndoor-left,X,a,2,shine\n');
    const once = importReadings(cabin, file, { newSpecimens: 'plaque' });
    expect(once.value).toBeDefined();
    expect(importReadings(once.value?.cabin ?? cabin, file, { newSpecimens: 'plaque' })).toMatchObject({ value: undefined, issues: [{ code: 'file-already-read' }] });
  });
});

test('readings of a cabin, taken into the cabin without readings, are the same readings', () => {
  const bare = (specimen: Specimen): Specimen => ({ ...specimen, readings: [] });
  const empty: Cabin = {
    ...cabin, masters: cabin.masters?.map(bare), parts: cabin.parts.map((part) => ({ ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map(bare) })) })),
  };
  const { value, issues } = importReadings(empty, cabinReadings(cabin));
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  const readings = (of: Cabin | undefined): object[] => [...(of?.masters ?? []), ...(of?.parts ?? []).flatMap((part) => part.sources.flatMap((source) => source.specimens))]
    .map(({ id, readings: list }) => ({ id, readings: list.map(({ file: _file, row: _row, outlier: _outlier, conditions, ...reading }) => ({ ...reading, under: { ...of?.conditions.find((one) => one.id === conditions), id: '' } })) }));
  const surfaceOnly = (list: object[]): object[] => JSON.parse(JSON.stringify(list)) as object[];
  expect(surfaceOnly(readings(value?.cabin))).toEqual(surfaceOnly(readings(cabin)));
});
