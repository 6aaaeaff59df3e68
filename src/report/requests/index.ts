export * from './line-id.ts';
export * from './map-reply.ts';
export * from './request-csv.ts';
export * from './request-html.ts';
export * from './request-sheet.ts';
