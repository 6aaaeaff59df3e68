import type { ArealParameters } from '../readings/reading.ts';
import { readColumn } from './column.ts';
import type { FoundConditions, FoundData, ReadingRecord } from './reading-set.ts';

export type ExportCell = string | number | undefined;

/** A property of readings by the name it has in a sheet and in ISO 28178; both are read back by the readers' table of words. */
export interface ExportColumn {
  readonly header: string;
  readonly field: string;
  readonly cell: (record: ReadingRecord, conditions: FoundConditions) => ExportCell;
}

const column = (header: string, field: string, cell: ExportColumn['cell']): ExportColumn => ({ header, field, cell });
const ofData = <Q extends FoundData['quantity']>(quantity: Q, read: (data: Extract<FoundData, { quantity: Q }>) => ExportCell): ExportColumn['cell'] =>
  ({ data }) => (data.quantity === quantity ? read(data as Extract<FoundData, { quantity: Q }>) : undefined);

/** Where a reading belongs. `id` and the specimen are each writer's own business. */
export const identityColumns: readonly ExportColumn[] = [
  column('part', 'PART', ({ part }) => part),
  column('source', 'SOURCE', ({ source }) => source),
  column('supplier', 'SUPPLIER', ({ supplier }) => supplier),
  column('kind', 'SPECIMEN_KIND', ({ kind }) => kind),
  column('lot', 'LOT', ({ lot }) => lot),
  column('stage', 'STAGE', ({ stage }) => stage),
  column('spot', 'SPOT', ({ spot }) => spot?.name),
  column('spot x (mm)', 'SPOT_X_MM', ({ spot }) => spot?.xMm),
  column('spot y (mm)', 'SPOT_Y_MM', ({ spot }) => spot?.yMm),
  column('named colour', 'NAMED_COLOUR', ({ colour }) => colour),
  column('rotation (deg)', 'ROTATION_DEG', ({ rotationDeg }) => rotationDeg),
  column('averaged from', 'AVERAGED_FROM', ({ averagedFrom }) => averagedFrom),
  column('measured at', 'MEASURED_AT', ({ measuredAt }) => measuredAt),
];

/** How it was measured. The fields of ISO 28178 are its keywords. */
export const conditionColumns: readonly ExportColumn[] = [
  column('instrument', 'INSTRUMENTATION', (_, { instrument }) => instrument),
  column('serial', 'INSTRUMENT_SERIAL', (_, { serial }) => serial),
  column('calibrated on', 'CALIBRATED_ON', (_, { calibratedOn }) => calibratedOn),
  column('geometry', 'MEASUREMENT_GEOMETRY', (_, { geometry }) => geometry),
  column('aperture (mm)', 'APERTURE_MM', (_, { apertureMm }) => apertureMm),
  column('uv', 'UV', (_, { uv }) => uv),
  column('aspecular (deg)', 'ASPECULAR_DEG', (_, { aspecularDeg }) => aspecularDeg),
  column('backing', 'SAMPLE_BACKING', (_, { backing }) => backing),
  column('temperature (C)', 'TEMPERATURE_C', (_, { temperatureC }) => temperatureC),
];

/** Light and observer of CIELAB values; keywords of their own in ISO 28178. */
export const viewColumns: readonly ExportColumn[] = [
  column('light', 'ILLUMINANT', ({ data }) => (data.quantity === 'cielab' || data.quantity === 'difference' ? data.light : undefined)),
  column('observer', 'OBSERVER', ({ data }) => (data.quantity === 'cielab' || data.quantity === 'difference' ? data.observer : undefined)),
];

const textureUnits: readonly (readonly [keyof ArealParameters, string, string])[] = [
  ['saUm', 'Sa (um)', 'SA_UM'], ['sqUm', 'Sq (um)', 'SQ_UM'], ['ssk', 'Ssk', 'SSK'], ['sku', 'Sku', 'SKU'], ['spUm', 'Sp (um)', 'SP_UM'], ['svUm', 'Sv (um)', 'SV_UM'],
  ['szUm', 'Sz (um)', 'SZ_UM'], ['salMm', 'Sal (mm)', 'SAL_MM'], ['str', 'Str', 'STR'], ['stdDeg', 'Std (deg)', 'STD_DEG'], ['sdq', 'Sdq', 'SDQ'], ['sdr', 'Sdr', 'SDR'],
  ['raUm', 'Ra (um)', 'RA_UM'], ['rzUm', 'Rz (um)', 'RZ_UM'], ['rsmMm', 'Rsm (mm)', 'RSM_MM'], ['vdiClass', 'VDI 3400 class', 'VDI_CLASS'],
];

export const textureColumns: readonly ExportColumn[] = textureUnits.map(([key, header, field]) => column(header, field, ofData('texture', ({ parameters }) => parameters[key])));

/** Values but spectra. */
export const valueColumns: readonly ExportColumn[] = [
  column('master', 'MASTER', ofData('difference', ({ master }) => master)),
  column('L', 'LAB_L', ofData('cielab', ({ lab }) => lab[0])),
  column('a', 'LAB_A', ofData('cielab', ({ lab }) => lab[1])),
  column('b', 'LAB_B', ofData('cielab', ({ lab }) => lab[2])),
  column('dL', 'DELTA_L', ofData('difference', ({ difference }) => difference[0])),
  column('da', 'DELTA_A', ofData('difference', ({ difference }) => difference[1])),
  column('db', 'DELTA_B', ofData('difference', ({ difference }) => difference[2])),
  column('angle', 'GLOSS_ANGLE', ofData('gloss', ({ angle }) => angle)),
  column('gloss', 'GLOSS', ofData('gloss', ({ gloss }) => gloss)),
  column('haze', 'HAZE', ofData('gloss', ({ haze }) => haze)),
  column('direction', 'GLOSS_DIRECTION', ofData('gloss', ({ direction }) => direction)),
  ...textureColumns,
  column('bandpass corrected', 'BANDPASS_CORRECTED', ofData('spectrum', ({ bandpassCorrected }) => (bandpassCorrected === undefined ? undefined : bandpassCorrected ? 'yes' : 'no'))),
];

/** A label's name as a column: marked where it would be taken for another column. */
export function labelHeader(name: string): string {
  const plain = name.replaceAll(/\s+/gu, ' ').trim();
  const read = readColumn(plain);
  return read.kind === 'label' && read.name === plain && read.unit === undefined && plain !== '' ? plain : `label: ${plain === '' ? '-' : plain}`;
}

/** A column for every label that occurs, in the order of their first record. Names that come to the same column share it. */
export function labelColumns(records: readonly ReadingRecord[]): ExportColumn[] {
  const names = new Map<string, string>();
  for (const { labels } of records) for (const name of Object.keys(labels ?? {})) if (!names.has(labelHeader(name))) names.set(labelHeader(name), name);
  return [...names].map(([header, name]) => column(header, header, ({ labels }) => (labels !== undefined && Object.hasOwn(labels, name) ? labels[name] : undefined)));
}
