import type { Cabin, Joint, MapPoint, Part, Source, Specimen } from '../../../src/cabin/cabin.ts';
import { cabinOutlines } from '../map/cabin-map.ts';
import type { Colourway } from '../plan/colourways.ts';
import { jointPlans } from '../plan/joints.ts';
import { masterPlans } from '../plan/masters.ts';
import { partPlans } from '../plan/parts.ts';
import { recordsFor } from '../plan/records.ts';
import { ambientLight, conditions, instruments, suppliers, zones } from '../plan/registers.ts';
import type { JointPlan, MasterPlan, PartPlan, SourcePlan, SpecimenPlan } from '../plan/types.ts';
import type { FileLog } from './file-log.ts';
import { fileLog } from './file-log.ts';
import { readingsOf } from './readings.ts';
import { sharedLength } from './shared-border.ts';
import { tileSetDocument } from './tile-set.ts';

export const asOf = '2026-05-18';

const note =
  'Everything in this file is invented: vehicle, parts, suppliers, prices, readings, records. ' +
  'It was made by the seeded script in demo-data/generator ' +
  'from a physical model (Kubelka-Munk mixtures of generic pigments with a surface term) ' +
  'and carries planted troubles, listed in demo-data/planted.json.';

const wayWords = { slate: 'SL', chalk: 'CH' } as const;

export function specimenOf(plan: SpecimenPlan, source: Pick<SourcePlan, 'material' | 'grain' | 'colouring'>, log: FileLog): Specimen {
  const { id, kind, lot, tool, cavity, producedOn, exposure } = plan;
  return {
    id,
    kind,
    ...(lot ? { lot } : {}),
    ...(tool ? { tool } : {}),
    ...(cavity ? { cavity } : {}),
    producedOn,
    phase: 'B1',
    ...(exposure ? { exposure } : {}),
    readings: readingsOf(plan, source, log),
  };
}

export function sourceDocument(plan: SourcePlan, log: FileLog): Source {
  const { specimens, grain, surface, colouring, ...rest } = plan;
  return {
    ...rest,
    // The recipe itself is nobody's business; that it is unlike the others is said in the note of the source.
    ...(colouring && !rest.note ? { note: `Coloured as ${colouring.kind}.` } : {}),
    surface: surface ?? 'solid',
    currency: 'EUR',
    ...(grain
      ? { grain: { id: grain.id, depthUm: grain.depthUm, ...(grain.vdiClass === undefined ? {} : { vdiClass: grain.vdiClass }) } }
      : {}),
    specimens: specimens.map((specimen) => specimenOf(specimen, plan, log)),
  };
}

export function masterDocument(plan: MasterPlan, log: FileLog): Specimen {
  const { id, name, material, issue } = plan;
  const onSphere = id === 'master-roof-moulded';
  const specimen: SpecimenPlan = {
    id,
    kind: 'master',
    producedOn: '2025-09-15',
    session: material === 'carpet' ? 'carpet-line' : 'house',
    spots: 5,
    lab: plan.lab,
    gloss60: plan.gloss60,
    ...(onSphere ? { sphereToo: true } : {}),
  };
  return { ...specimenOf(specimen, plan, log), issue, expires: '2027-09-15', remeasureOn: '2026-09-15', note: name };
}

function partDocument(plan: PartPlan, number: number, way: Colourway, outline: readonly MapPoint[] | undefined, log: FileLog): Part {
  const { sources, ...rest } = plan;
  return {
    ...rest,
    partNumber: `S4-${wayWords[plan.frozen ? 'slate' : way.id]}-${1100 + 10 * number}`,
    revision: 'C',
    ...(outline ? { outline } : {}),
    sources: sources.map((source) => sourceDocument(source, log)),
  };
}

function jointDocument(plan: JointPlan, outlines: Readonly<Record<string, readonly MapPoint[]>>, way: Colourway): Joint {
  const [first, second] = plan.parts;
  const length = plan.kind === 'sightline' ? 0 : borderLength(first, second, outlines);
  const stitch = plan.parts.find((part) => part.includes('stitch'));
  return {
    ...plan,
    ...(length > 0 ? { lengthMm: Math.round(length / 5) * 5 } : {}),
    ...(stitch ? { path: outlines[stitch] } : {}),
    ...recordsFor(plan.id, way.id),
  };
}

function borderLength(first: string, second: string, outlines: Readonly<Record<string, readonly MapPoint[]>>): number {
  const isOpen = (part: string): boolean => part.includes('stitch');
  const open = [isOpen(first), isOpen(second)] as const;
  const reach = open[0] || open[1] ? 60 : 9;
  return open[1]
    ? sharedLength(outlines[second], outlines[first], reach, [open[1], open[0]])
    : sharedLength(outlines[first], outlines[second], reach, open);
}

/** The whole cabin of a colourway. */
export function buildCabin(way: Colourway): Cabin {
  const log = fileLog();
  const outlines = cabinOutlines();
  const plans = partPlans(way);
  const lightness = new Map(
    plans.map((part) => [
      part.id,
      (part.sources[0].specimens[0] ?? plans.find((other) => other.id === part.mirrorOf)?.sources[0].specimens[0])?.lab[0] ?? 0,
    ]),
  );
  const parts = plans.map((plan, index) => partDocument(plan, index, way, outlines[plan.id], log));
  const masters = masterPlans(way).map((plan) => masterDocument(plan, log));
  const tileSets = way.id === 'slate' ? [tileSetDocument(log)] : undefined;
  return {
    format: 'adjoin-cabin',
    version: 1,
    id: `shuttle-${way.id}`,
    name: `Shuttle S4, ${way.name.toLowerCase()}`,
    trimLevel: 'Line 2',
    colourway: way.name,
    phase: 'B1',
    revision: '7',
    asOf,
    stage: 'new',
    note,
    volume: 8000,
    zones,
    suppliers,
    instruments,
    conditions,
    files: log.files(),
    lights: [ambientLight],
    masters,
    ...(tileSets ? { tileSets } : {}),
    parts,
    joints: jointPlans((part) => (lightness.get(part) ?? 0) > 60).map((plan) => jointDocument(plan, outlines, way)),
    runs: [
      {
        id: 'run-lower',
        name: 'Lower tone, door to door',
        parts: ['map-pocket-left', 'mid-dash-left', 'mid-dash-right', 'map-pocket-right'],
      },
      { id: 'run-roof', name: 'Roof, pillar to pillar', parts: ['a-pillar-left', 'headliner', 'a-pillar-right'] },
    ],
    ruleBook: 'ciede2000',
  };
}
