/** The cabins that lie beside the workbench, to open from its start: their place in it and their address. */
export const offeredCabins = [
  { name: 'Open the shuttle, slate', about: '60 parts, 93 joints, troubles planted', place: 'cabin', address: 'demo-data/shuttle-slate.cabin.json' },
  { name: 'The same shuttle, chalk', about: 'its light colourway', place: 'cabin', address: 'demo-data/shuttle-chalk.cabin.json' },
  { name: 'First steps', about: 'six parts, to learn on', place: 'cabin', address: 'demo-data/first-steps.cabin.json' },
  { name: 'Lots in series', about: 'six parts, one drifts', place: 'series', address: 'demo-data/lots.cabin.json' },
] as const;
