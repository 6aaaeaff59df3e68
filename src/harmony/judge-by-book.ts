import { compileRuleBook } from '../rules/compile-rule-book.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import { judgeContext } from './judge-context.ts';
import { judgeJoint, jointRule, orderedSides } from './judge-joint.ts';
import type { JudgedJoint } from './judge-joint.ts';
import { judgePart, judgeWith, masterUseIn } from './judge.ts';
import type { JudgedCabin } from './judge.ts';
import type { PartResult } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';
import { sameRule } from './same-rule.ts';

/** All of a book that joints and parts are judged by beside the rule of the joint and the classes of their materials. */
function beyondRules({
  id: _id, name: _name, note: _note, rules: _rules, materials: _materials, combination: _combination, texture: _texture, visibleTexture: _visible,
  textureLightness: _lightness, toneStep: _step, contrast: _contrast, kinds: _kinds, gapFactor: _gap, readingsWanted: _wanted, ...rest
}: RuleBook): string {
  return JSON.stringify(rest);
}

/**
 * The same cabin judged by another rule book, with the share of joints that is done after each one that had to be judged. What the new book
 * asks in the same way as the one before stands; the result is that of `judgeCabin()`. Throws a RangeError for a book that does not compile.
 */
export function* judgeByBookInSteps(previous: JudgedCabin, book: RuleBook): Generator<number, JudgedCabin, void> {
  const { value: rules, issues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${issues[0]?.code ?? 'unknown fault'}`);
  const { context: before } = previous;
  const { cabin } = before;
  const context = judgeContext(cabin, rules, before.stage, before.asOf, before.memory, before.names);
  const sameFrame = beyondRules(before.book) === beyondRules(rules.book);
  const sameRow = new Map<string, boolean>();
  const keepsRow = (material: string): boolean => {
    const known = sameRow.get(material) ?? JSON.stringify(before.rules.materialClass(material)) === JSON.stringify(rules.materialClass(material));
    sameRow.set(material, known);
    return known;
  };
  const bases = new Map<string, PartBasis>();
  const parts: PartResult[] = [];
  const stands = (basis: PartBasis): boolean => sameFrame && keepsRow(basis.source.material);
  const standing = new Set<string>();
  previous.inOrder.forEach((basis, place) => {
    const { id } = basis.part;
    // New objects, since runs go by them: their ends may be asked for otherwise now.
    const own = stands(basis) ? { ...basis }
      : { ...basis, materialClass: rules.materialClass(basis.source.material), colour: basis.colour === undefined ? undefined : { ...basis.colour } };
    bases.set(id, own);
    if (stands(basis)) standing.add(id);
    parts.push((standing.has(id) ? previous.judgement.parts[place] : undefined) ?? judgePart(context, own));
  });
  const masterUse = masterUseIn(context, parts);
  const joints: JudgedJoint[] = [];
  for (const judged of previous.joints) {
    const { joint } = judged.input;
    const onSameGround = joint.parts.every((id) => standing.has(id));
    const sides = orderedSides(joint, bases);
    if (onSameGround && sameRule(judged.input.rule, jointRule(context, joint, sides))) {
      joints.push({ ...judged, input: { ...judged.input, book: rules.book, sides } });
      continue;
    }
    joints.push(judgeJoint(context, joint, bases, masterUse));
    yield joints.length / previous.joints.length;
  }
  return judgeWith(context, issues, {
    basis: (part) => bases.get(part.id), part: (_, place) => parts[place], joint: (_, __, place) => joints[place], paths: () => undefined,
  });
}

/** The same in one go. */
export function judgeByBook(previous: JudgedCabin, book: RuleBook): JudgedCabin {
  const steps = judgeByBookInSteps(previous, book);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
