export * from './has-lots.ts';
export * from './series-cabin.ts';
export * from './series-words.ts';
export type * from './part-series.ts';
export type { BuildCost, BuildPlan, BuiltSet } from './build/build-together.ts';
export type { ForecastPlace, ForecastState, JointForecast } from './forecast/joint-forecast.ts';
export { leastLotsForChart, type ChartedLot } from './control/control-chart.ts';
export { leastLotsForTrend } from './trend/fit-trend.ts';
