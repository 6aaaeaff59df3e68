import { lightByName } from '../../../src/colour/index.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { CielabReading, Geometry, GlossReading, Reading, SpectrumReading, TextureReading } from '../../../src/readings/reading.ts';
import { surfaceReflection } from '../physics/layer.ts';
import type { Recipe } from '../physics/pigments.ts';
import { labOf } from '../physics/grid.ts';
import { nudger } from '../physics/nudge.ts';
import { recipeFor, spectrumOf } from '../physics/recipe.ts';
import type { Surface } from '../physics/layer.ts';
import type { MaterialModel } from '../plan/materials.ts';
import { modelOf } from '../plan/materials.ts';
import type { Session } from '../plan/registers.ts';
import { conditions, sessions } from '../plan/registers.ts';
import type { GrainPlan, SpecimenPlan } from '../plan/types.ts';
import { centredNormals, randomOf } from '../random.ts';
import type { Colouring } from '../physics/recipe.ts';
import type { FileLog } from './file-log.ts';

const rounded = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;
const geometryOf = (session: Session): Geometry => conditions.find((one) => one.id === session.conditions)?.geometry ?? 'unknown';

export interface Coloured {
  readonly material: string;
  readonly grain?: GrainPlan;
  readonly colouring?: Colouring;
}

/** All readings of one specimen: colour of its session, sphere readings, gloss, texture. */
export function readingsOf(specimen: SpecimenPlan, made: Coloured, log: FileLog): Reading[] {
  const model = modelOf(made.material);
  const surface: Surface = { index: model.index, gloss60: specimen.gloss60, openness: model.openness };
  const session = sessions[specimen.session];
  const trueLab: Lab = [
    specimen.lab[0] - session.deviation[0],
    specimen.lab[1] - session.deviation[1],
    specimen.lab[2] - session.deviation[2],
  ];
  const recipe = recipeFor(trueLab, surface, geometryOf(session), session.grid, made.colouring ?? { kind: 'mineral' });
  const inSession = (name: keyof typeof sessions): Reading[] => colourReadings(specimen, sessions[name], recipe, surface, model, log);
  return [
    ...inSession(specimen.session),
    ...(specimen.sphereToo ? [...(specimen.session === 'sphere' ? [] : inSession('sphere')), ...inSession('sphere-excluded')] : []),
    ...(model.glossSd === undefined ? [] : glossReadings(specimen, model.glossSd, surface, made.material, log)),
    ...(made.grain ? textureReadings(specimen, made.grain, log) : []),
  ];
}

function colourReadings(
  specimen: SpecimenPlan,
  session: Session,
  recipe: Recipe,
  surface: Surface,
  model: MaterialModel,
  log: FileLog,
): (SpectrumReading | CielabReading)[] {
  const random = randomOf(`colour ${specimen.id} ${session.conditions}`);
  const values = spectrumOf(recipe, surface, geometryOf(session), session.grid);
  const change = nudger(values, session.grid);
  const spread = model.spotSd.map((sd) => centredNormals(random, specimen.spots).map((draw) => sd * draw));
  const rotations = model.rotations ?? [undefined];
  return Array.from({ length: specimen.spots }, (_, spot) =>
    rotations.map((rotation): SpectrumReading | CielabReading => {
      const along = rotation === undefined ? 0 : Math.cos((rotation * Math.PI) / 90) * (model.pileLightness ?? 0);
      const deviation: Lab = [
        session.deviation[0] + spread[0][spot] + along,
        session.deviation[1] + spread[1][spot],
        session.deviation[2] + spread[2][spot],
      ];
      const reported = change(deviation).map((value) => rounded(value * (1 + 1e-4 * random.normal()), 5));
      const common = {
        spot: { name: String(spot + 1) },
        conditions: session.conditions,
        ...(rotation === undefined ? {} : { rotationDeg: rotation }),
        averagedFrom: 3,
        measuredAt: session.measuredOn,
      };
      if (session === sessions['tri-filter']) {
        const lab = labOf(reported, session.grid).map((value) => rounded(value, 2)) as unknown as Lab;
        return {
          quantity: 'cielab',
          ...common,
          lab,
          light: lightByName('D65')?.name ?? 'D65',
          observer: 10,
          ...log.row(session.file, session.measuredOn, [specimen.id, spot + 1, ...lab]),
        };
      }
      return {
        quantity: 'spectrum',
        ...common,
        startNm: session.grid.startNm,
        stepNm: session.grid.stepNm,
        values: reported,
        bandpassCorrected: true,
        ...log.row(session.file, session.measuredOn, [specimen.id, spot + 1, rotation ?? '', ...reported]),
      };
    }),
  ).flat();
}

/** Gloss at 60 degrees along and across the grain; shiny faces at 20 degrees too, gloss black with its haze. */
function glossReadings(specimen: SpecimenPlan, sd: number, surface: Surface, material: string, log: FileLog): GlossReading[] {
  const random = randomOf(`gloss ${specimen.id}`);
  const noise = centredNormals(random, specimen.spots);
  const file = 'gloss-2026-05';
  const reading = (spot: number, angle: 20 | 60, gloss: number, extra: Partial<GlossReading>): GlossReading => ({
    quantity: 'gloss',
    spot: { name: String(spot + 1) },
    conditions: 'gloss',
    measuredAt: '2026-05-05',
    angle,
    gloss: rounded(Math.max(0, gloss), 2),
    ...extra,
    ...log.row(file, '2026-05-05', [specimen.id, spot + 1, angle, rounded(gloss, 2)]),
  });
  return noise.flatMap((draw, spot) => {
    const level = surface.gloss60 + sd * draw;
    if (surface.gloss60 < 20) {
      return (['along', 'across'] as const).map((direction) =>
        reading(spot, 60, level * (direction === 'along' ? 1.012 : 0.988), { direction }),
      );
    }
    const mirror60 = surfaceReflection(surface.index, 60) / surfaceReflection(1.567, 60);
    const mirror20 = surfaceReflection(surface.index, 20) / surfaceReflection(1.567, 20);
    const level20 = 100 * mirror20 * Math.min(1, level / (100 * mirror60)) ** 3.2;
    return [
      reading(spot, 60, level, {}),
      ...(surface.gloss60 > 70
        ? [reading(spot, 20, level20, material === 'gloss-black' ? { haze: rounded(9 + 2 * random.uniform(), 1) } : {})]
        : []),
    ];
  });
}

function textureReadings(specimen: SpecimenPlan, grain: GrainPlan, log: FileLog): TextureReading[] {
  const random = randomOf(`texture ${specimen.id}`);
  return centredNormals(random, 3).map((draw, spot) => {
    const sa = grain.saUm * (1 + 0.03 * draw);
    const parameters = {
      saUm: rounded(sa, 2),
      sqUm: rounded(1.27 * sa, 2),
      ssk: rounded(-0.35 + 0.05 * random.normal(), 2),
      sku: rounded(3.1 + 0.1 * random.normal(), 2),
      szUm: rounded(7.6 * sa, 1),
      salMm: rounded(grain.salMm * (1 + 0.02 * random.normal()), 3),
      str: rounded(grain.str + 0.01 * random.normal(), 3),
      sdq: rounded(sa / (62 * grain.salMm), 3),
      ...(grain.vdiClass === undefined ? {} : { vdiClass: grain.vdiClass }),
    };
    return {
      quantity: 'texture',
      spot: { name: String(spot + 1) },
      conditions: 'areal',
      measuredAt: '2026-04-30',
      parameters,
      ...log.row('areal-2026-04', '2026-04-30', [specimen.id, spot + 1, ...Object.values(parameters)]),
    };
  });
}
