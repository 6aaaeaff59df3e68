export * from './csv.ts';
export * from './html.ts';
export * from './json.ts';
export * from './model.ts';
export * from './model/report-model.ts';
export * from './software.ts';
export * from './masters/index.ts';
export * from './requests/index.ts';
