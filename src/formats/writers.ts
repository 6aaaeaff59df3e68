import type { FormatWriter } from './format-writer.ts';
import { csvWriter } from './write-csv.ts';
import { iso17972Writer } from './write-iso17972.ts';
import { iso28178Writer } from './write-iso28178.ts';
import { jsonWriter } from './write-json.ts';

export const writers: readonly FormatWriter[] = [csvWriter, iso28178Writer, iso17972Writer, jsonWriter];

export const writerById = (id: string): FormatWriter | undefined => writers.find((writer) => writer.id === id);
