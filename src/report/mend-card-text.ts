import type { Cabin } from '../cabin/cabin.ts';
import { partNames } from '../harmony/names.ts';
import type { MendCard } from '../plan/index.ts';
import { csvCell } from './csv.ts';
import { fixed, signed } from './number-text.ts';

/** What a change asks to be looked at by others, on every card. */
export const mendCaution = 'A change of material, pigment or finish touches flammability, emissions, airbag cover and glare requirements that are not judged here: local codes and the responsible licensed engineer decide.';

const named = (cabin: Cabin, { parts }: MendCard): string => {
  const names = partNames(cabin.parts);
  return parts.map((id) => names.get(id) ?? id).join(' and ');
};

const supplierOf = (cabin: Cabin, { supplier }: MendCard): string => cabin.suppliers.find(({ id }) => id === supplier)?.name ?? supplier;

/** One card as plain text for its supplier: what is asked in words, then the numbers, then the cautions. Ends with a line feed. */
export function mendCardText(cabin: Cabin, card: MendCard): string {
  const names = partNames(cabin.parts);
  const { dL, da, db, dGloss } = card.shift;
  const lab = (value: MendCard['from']): string => (value === undefined ? '-' : value.map((each) => fixed(each, 2)).join(', '));
  const joints = card.joints.map((id) => cabin.joints.find((joint) => joint.id === id)?.parts.map((part) => names.get(part) ?? part).join(' / ') ?? id);
  const numbers = parts(cabin, card).map(({ name, number }) => `  ${name}${number === undefined ? '' : `, part number ${number}`}`);
  return [
    `${named(cabin, card)}`, `For ${supplierOf(cabin, card)}`, `${cabin.name}${cabin.colourway === undefined ? '' : `, ${cabin.colourway}`}${cabin.phase === undefined ? '' : `, phase ${cabin.phase}`}`, '',
    ...card.sentences.filter((sentence) => !sentence.startsWith('It mends')), '',
    'Parts', ...numbers, '',
    `Source        ${card.source}`,
    `Now           L*, a*, b* ${lab(card.from)} under D65`,
    `Target        L*, a*, b* ${lab(card.to)} under D65`,
    `Shift         dL* ${signed(dL, 2)}, da* ${signed(da, 2)}, db* ${signed(db, 2)}`,
    ...(card.gloss === undefined ? [] : [`Gloss         ${fixed(card.gloss.from, 2)} to ${fixed(card.gloss.to, 2)} GU at ${card.gloss.angle} deg (${signed(dGloss, 2)})${card.toolChange ? ', by a change of the tool' : ''}`]),
    `Basis         ${card.basis}`,
    ...(card.spectrum === undefined ? [] : ['', 'Reflectance factor the target implies (smoothest change, not a recipe)', '  nm      now     target', ...spectrumLines(card.spectrum)]),
    ...(joints.length === 0 ? [] : ['', 'Once all cards are met, it mends', ...joints.map((joint) => `  ${joint}`)]),
    '', mendCaution, '',
  ].join('\n');
}

const parts = (cabin: Cabin, card: MendCard): readonly { readonly name: string; readonly number: string | undefined }[] => {
  const names = partNames(cabin.parts);
  return card.parts.map((id) => ({ name: names.get(id) ?? id, number: cabin.parts.find((part) => part.id === id)?.partNumber }));
};

const spectrumLines = ({ startNm, stepNm, from, to }: NonNullable<MendCard['spectrum']>): string[] =>
  from.map((value, index) => `  ${String(startNm + index * stepNm).padEnd(6)}${value.toFixed(4).padStart(7)}${(to[index] ?? NaN).toFixed(4).padStart(9)}`);

const columns = ['supplier', 'part', 'id', 'partNumber', 'source', 'dL', 'da', 'db', 'dGloss', 'L', 'a', 'b', 'targetL', 'targetA', 'targetB', 'glossAngle', 'gloss', 'targetGloss', 'toolChange', 'mends'] as const;

/** All cards as a table by RFC 4180, a row a part: shifts and CIELAB under D65, gloss in GU. */
export function mendCsv(cabin: Cabin, cards: readonly MendCard[]): string {
  const rows = cards.flatMap((card) => card.parts.map((id) => {
    const part = cabin.parts.find((one) => one.id === id);
    const { dL, da, db, dGloss } = card.shift;
    return [
      supplierOf(cabin, card), part?.name ?? id, id, part?.partNumber, card.source, dL, da, db, dGloss,
      ...(card.from ?? [undefined, undefined, undefined]), ...(card.to ?? [undefined, undefined, undefined]), card.gloss?.angle, card.gloss?.from, card.gloss?.to, card.toolChange ? 'yes' : 'no', card.joints.join(' '),
    ];
  }));
  return [columns, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}
