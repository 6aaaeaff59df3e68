import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import type { CabinMapInput, MapJoint, MapPart } from '../../src/report/figures/cabin-map.ts';
import type { PartColour } from './part-colours.ts';
import type { JointPaths } from '../../src/workers/session-protocol.ts';
import { standingSource } from './joint-filter.ts';
import { verdictWord } from './leading-check.ts';

/** What the map draws that does not change with the pointer. */
export function mapInput(
  cabin: Cabin, judgement: Judgement, colours: ReadonlyMap<string, PartColour>, paths: JointPaths,
): CabinMapInput {
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const materials = new Map(cabin.parts.map((part) => [part.id, standingSource(part)?.material]));
  const results = new Map(judgement.joints.map((joint) => [joint.id, joint]));
  const parts = cabin.parts.flatMap((part): MapPart[] =>
    part.outline === undefined || part.outline.length < 2
      ? []
      : [{ id: part.id, name: part.name, outline: part.outline, line: materials.get(part.id) === 'thread', fill: colours.get(part.id)?.css }]);
  const joints = cabin.joints.flatMap((joint): MapJoint[] => {
    const result = results.get(joint.id);
    const path = paths.get(joint.id);
    if (result === undefined || path === undefined || path.points.length < 2) return [];
    const label = `${joint.parts.map((id) => names.get(id) ?? id).join(' and ')}: ${verdictWord(result)}`;
    return [{ id: joint.id, lead: path.kind === 'lead', path: path.points, verdict: result.verdict, accepted: result.accepted, label }];
  });
  const zones = cabin.zones.map(({ id, name }) => ({ id, name, parts: cabin.parts.filter((part) => part.zone === id).map((part) => part.id) }));
  return { title: `Map of ${cabin.name}`, parts, joints, zones };
}
