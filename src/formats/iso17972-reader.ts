import { maxNameLength } from '../cabin/schema/text.ts';
import type { Outcome } from '../issue.ts';
import { geometryClass } from '../readings/geometry-class.ts';
import type { Geometry } from '../readings/reading.ts';
import type { Column } from './column.ts';
import { readColumn } from './column.ts';
import { readDateTime } from './condition-words.ts';
import type { FormatInput, FormatReader } from './format-reader.ts';
import { cxfNamespace, cxfRoot, unknownDate } from './iso17972-names.ts';
import { readCielab, readDifference, readGloss, readSpectrum, specificationOf } from './iso17972-object.ts';
import type { Specification } from './iso17972-specifications.ts';
import { readSpecifications } from './iso17972-specifications.ts';
import { nameText } from './name-text.ts';
import type { ReadingCollector } from './reading-collector.ts';
import { collectReadings, defined } from './reading-collector.ts';
import { geometryChoices, isPartialGeometry } from './reading-questions.ts';
import type { FoundConditions, FoundData, FoundGeometry, ReadingSet } from './reading-set.ts';
import type { RowIdentity } from './row-identity.ts';
import { rowReader } from './row-identity.ts';
import type { TableFaults } from './table-faults.ts';
import { fieldCells } from './table-source.ts';
import type { TableSource } from './table-source.ts';
import { rowGlossDetail, rowTexture } from './table-surface.ts';
import { sniffRoot } from './sniff-root.ts';
import type { XmlDocument, XmlElement } from './xml-tree.ts';
import { attributeOf, childOf, childText, childrenOf, readXml } from './xml-tree.ts';

/**
 * ISO 17972-1 (the core of CxF3): objects with reflectance spectra, CIELAB values and differences, gloss and other physical
 * attributes, the measurement specification and its geometry. Core elements only; custom resources are passed over.
 * Tags are known by the words of the tables of readings (`Part`, `Lot`, `Spot`); others are labels.
 */
export const iso17972Reader: FormatReader = {
  id: 'iso17972', label: 'ISO 17972-1 XML', extensions: ['.cxf', '.xml'],
  sniff: (text) => (sniffRoot(text) === cxfRoot ? 1 : 0),
  read(input: FormatInput): Outcome<ReadingSet> {
    const document = readXml(input.text, input.file);
    const { root, faults } = document;
    if (root === undefined) return { value: undefined, issues: faults.list() };
    const collector = collectReadings();
    checkRoot(root, faults);
    readObjects(childOf(root, 'Resources'), document, collector);
    if (collector.count === 0 && faults.errors() === 0) {
      faults.add('nothing-measured', root.offset, { expected: 'an object with a reflectance spectrum, CIELAB values, a difference, gloss or texture', found: 'none' });
    }
    const date = childText(childOf(root, 'FileInformation'), 'CreationDate') ?? '';
    const created = date === unknownDate ? undefined : readDateTime(date);
    const set = collector.finish({ reader: 'iso17972', file: input.file, sha256: input.sha256, created });
    return { value: faults.errors() > 0 ? undefined : set, issues: faults.list() };
  },
};

function checkRoot(root: XmlElement, faults: TableFaults): void {
  if (root.name !== cxfRoot || (root.namespace !== cxfNamespace && root.namespace !== '')) {
    faults.add('unknown-format', root.offset, { expected: `${cxfRoot} in the namespace ${cxfNamespace}`, found: JSON.stringify(`${root.name} in ${root.namespace.slice(0, 100)}`) });
  } else if (root.namespace === '') {
    faults.add('namespace-missing', root.offset, { severity: 'warning', expected: `the namespace ${cxfNamespace}`, found: 'none' });
  }
}

function readObjects(resources: XmlElement | undefined, document: XmlDocument, collector: ReadingCollector): void {
  const { faults } = document;
  const specifications = readSpecifications(resources, faults);
  const objects = childrenOf(childOf(resources, 'ObjectCollection'), 'Object');
  const names = new Map<string, string>();
  for (const object of objects) {
    const id = attributeOf(object, 'Id');
    if (id === undefined || id.value.trim() === '') faults.add('missing-field', object.offset, { expected: 'an Id of the Object', found: 'none' });
    else if (names.has(id.value)) faults.add('duplicate-id', id.offset, { expected: 'an Id that no other Object has', found: JSON.stringify(id.value.slice(0, 60)) });
    else names.set(id.value, nameOf(object));
  }
  objects.forEach((object, index) => readObject(object, index + 1, { document, collector, specifications, names }));
}

const nameOf = (object: XmlElement): string => nameText(attributeOf(object, 'Name')?.value) ?? nameText(attributeOf(object, 'Id')?.value) ?? '';

interface ObjectContext {
  readonly document: XmlDocument;
  readonly collector: ReadingCollector;
  readonly specifications: ReadonlyMap<string, Specification>;
  readonly names: ReadonlyMap<string, string>;
}

function readObject(object: XmlElement, row: number, { document, collector, specifications, names }: ObjectContext): void {
  const { faults, position } = document;
  const source = attributesOf(object, document);
  const cells = fieldCells(source, faults);
  const read = rowReader(source, cells, faults);
  const [only] = source.table.rows;
  const identity = read.identity(only);
  const own = read.conditions(only);
  const labels = Object.fromEntries(source.columns.flatMap((column, index) => (column.kind === 'label' && column.name !== '__proto__' ? [[column.name, only.cells[index] ?? '']] : [])));
  if (identity === undefined) return;
  const { line } = position(object.offset);
  let found = 0;
  const add = (data: FoundData | undefined, conditions: FoundConditions, measuredAt?: string): void => {
    found += 1;
    if (data === undefined) return;
    const record: RowIdentity = defined({ ...identity, measuredAt: identity.measuredAt ?? measuredAt });
    collector.add({ ...record, conditions: collector.conditions(mergedConditions(own, conditions)), data, ...(Object.keys(labels).length === 0 ? {} : { labels }), row, line });
  };
  for (const value of [...(childOf(object, 'ColorValues')?.children ?? []), ...(childOf(object, 'ColorDifferenceValues')?.children ?? [])]) {
    if (value.namespace !== object.namespace) continue;
    const reader = valueReaders[value.name];
    if (!Object.hasOwn(valueReaders, value.name) || reader === undefined) {
      faults.add('value-not-used', value.offset, { severity: 'warning', expected: `one of ${Object.keys(valueReaders).join(', ')}`, found: value.name.slice(0, 60), hint: 'It is left out.' });
      continue;
    }
    const specification = specificationOf(value, specifications, faults);
    if (specification !== undefined) add(reader(value, specification, names, faults), specification.conditions, readDateTime(attributeOf(value, 'MeasureDate')?.value ?? ''));
    else found += 1;
  }
  const gloss = childrenOf(childOf(object, 'PhysicalAttributes'), 'Gloss').map((element) => readGloss(element, faults));
  const beside = gloss.length === 1 ? rowGlossDetail(only, read) : {};
  for (const value of gloss) add(value && { ...value, ...beside }, {});
  const texture = rowTexture(only, read);
  if (texture !== undefined) add(texture, {});
  if (found === 0) faults.add('nothing-measured', object.offset, { severity: 'warning', expected: 'values that are read', found: 'none in this object', hint: 'It is left out.' });
}

/** What the specification says, completed by the tags; a tag may say more precisely what the standard's geometries leave open. */
function mergedConditions(own: FoundConditions, specified: FoundConditions): FoundConditions {
  const [tagged, stated] = [own.geometry, specified.geometry];
  const finer = tagged !== undefined && !isPartialGeometry(tagged)
    && (stated === undefined || geometryClass(tagged) === geometryClass(isPartialGeometry(stated) ? finestGeometry(stated, tagged) : stated));
  const reversed = stated === 'd:8' && tagged === '8:d';
  return defined({ ...own, ...specified, geometry: finer || reversed ? tagged : stated ?? tagged });
}

const finestGeometry = (stated: FoundGeometry, tagged: Geometry): Geometry => (geometryChoices(stated).includes(tagged) ? tagged : 'unknown');

type ValueReader = (element: XmlElement, specification: Specification, names: ReadonlyMap<string, string>, faults: TableFaults) => FoundData | undefined;

const valueReaders: Readonly<Record<string, ValueReader>> = {
  ReflectanceSpectrum: (element, specification, _names, faults) => readSpectrum(element, specification, faults),
  ColorCIELab: (element, specification, _names, faults) => readCielab(element, specification, faults),
  ColorCIELCh: (element, specification, _names, faults) => readCielab(element, specification, faults),
  DeltaCIELab: readDifference,
};

/** Id, name, tags and custom physical attributes of an object as a table of one row, so that they are read as columns are. */
function attributesOf(object: XmlElement, { position, faults }: XmlDocument): TableSource {
  const physical = childOf(object, 'PhysicalAttributes');
  const id = attributeOf(object, 'Id');
  const tags = [
    ...childrenOf(childOf(object, 'TagCollection'), 'Tag').map((tag) => cellOf(attributeOf(tag, 'Name')?.value, attributeOf(tag, 'Value')?.value, attributeOf(tag, 'Value')?.offset ?? tag.offset)),
    ...childrenOf(physical, 'CustomAttributeValue').map((value) => cellOf(attributeOf(value, 'Label')?.value, value.text, value.textOffset)),
  ].filter(({ name, text }) => name !== '' && text !== '');
  const seen = new Set<string>();
  const isNew = (cell: AttributeCell): boolean => {
    const { column } = cell;
    const key = column.kind === 'field' ? column.field : column.kind === 'label' ? `label ${column.name}` : cell.name;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  const kept = tags.filter((cell) => {
    if (cell.name.length > maxNameLength) {
      faults.add('text-too-long', cell.offset, { expected: `a name of at most ${maxNameLength} characters`, found: `${cell.name.length} characters` });
    }
    if (isNew(cell)) return true;
    faults.add('duplicate-column', cell.offset, { severity: 'warning', expected: 'each property once', found: JSON.stringify(cell.name.slice(0, 60)), hint: 'The first one is used.' });
    return false;
  });
  // A tag goes before the attribute of the same meaning: an Id must be a name of XML, the party's own id need not.
  kept.push(...[
    cellOf('id', id?.value, id?.offset ?? object.offset),
    cellOf('specimen', nameOf(object), attributeOf(object, 'Name')?.offset ?? object.offset),
    // Of the types of objects only this one says something about the specimen.
    ...(attributeOf(object, 'ObjectType')?.value === 'Standard' ? [cellOf('kind', 'master', object.offset)] : []),
  ].filter((cell) => cell.text !== '' && isNew(cell)));
  return {
    table: {
      decimal: '.', separator: '\t', position,
      header: { cells: kept.map(({ name }) => name), offsets: kept.map(({ offset }) => offset) },
      rows: [{ cells: kept.map(({ text }) => text), offsets: [...kept.map(({ offset }) => offset), object.offset] }],
    },
    columns: kept.map(({ column }) => column),
    declared: new Map(),
  };
}

interface AttributeCell {
  readonly name: string;
  readonly text: string;
  readonly offset: number;
  readonly column: Column;
}

function cellOf(name: string | undefined, text: string | undefined, offset: number): AttributeCell {
  const plain = name?.trim() ?? '';
  const column = readColumn(plain);
  return { name: plain, text: text?.trim() ?? '', offset, column: column.kind === 'reflectance' ? { kind: 'label', name: plain } : column };
}
