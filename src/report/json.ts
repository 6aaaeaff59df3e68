import type { ReportInput } from './model.ts';
import { reportModel } from './model.ts';

/** The report as data: all that the page says, numbers in full double precision. */
export const reportJson = (input: ReportInput): string => `${JSON.stringify(reportModel(input), undefined, 2)}\n`;
