import type { Cabin } from '../../cabin/cabin.ts';
import { planNames } from '../choose/plan-words.ts';
import type { PairJudge } from '../model/pair-judge.ts';
import type { FreeMix, SourceHarm } from './free-mix.ts';

const perCent = (share: number): string => (share > 0 && share < 0.001 ? 'under 0.1 %' : `${Number((100 * share).toFixed(1))} %`);

/** What comes of a mix in whole sentences. */
export function mixWords(mix: Omit<FreeMix, 'words'>, cabins: readonly Cabin[], judges: readonly PairJudge[], mixes: boolean): readonly string[] {
  const names = cabins.map((cabin, index) => planNames({ cabin, judge: judges[index], currency: '' }));
  if (cabins.every((cabin) => cabin.parts.length === 0)) return ['There are no parts: nothing is mixed.'];
  const several = cabins.length > 1;
  const place = (id: string): number => cabins.findIndex((cabin) => cabin.id === id);
  const titled = (index: number): string => `${cabins[index].name}${several && cabins[index].colourway !== undefined ? ` (${cabins[index].colourway})` : ''}`;
  const named = ({ part, cabins: own, source }: Pick<SourceHarm, 'part' | 'cabins' | 'source'>): string =>
    `${names[place(own[0])].source(part, source)}${several && own.length === 1 ? ` in ${cabins[place(own[0])].colourway ?? cabins[place(own[0])].name}` : ''}`;
  const worst = mix.harm[0];
  const { dropped, unavoidable } = mix.largest;
  const unclear = unavoidable.length === 0 ? '' : unavoidable.length === 1 ? 'one joint does not hold for certain whatever runs' : `${unavoidable.length} joints do not hold for certain whatever runs`;
  return [
    ...mix.cabins.map((result, index) => `${perCent(result.share)} of the cabins ${titled(index)} have at least one clash `
      + `${result.draws === 0 ? '(exact, over all combinations)' : `(simulated over ${result.draws} cabins, standard error ${perCent(result.error)})`}; ${Number(result.expectedClashes.toFixed(2))} clashes a cabin on average. Counting only joints that clash for certain: ${perCent(result.certainShare)}.`),
    ...(several ? [
      `Over all ${cabins.length} colourways it is ${perCent(mix.share)} of the cabins.`,
      mix.carried.length === 0 ? 'No part is carried over between them with the same sources: each is mixed by itself.'
        : `${mix.carried.length === 1 ? 'One part is' : `${mix.carried.length} parts are`} carried over between them: a source of such a part that may be mixed freely holds in every colourway.`,
    ] : []),
    ...(mixes ? [] : ['No part has more than one approved source: nothing is mixed.']),
    ...(worst !== undefined && worst.harm > 0 ? [`${named(worst)} does most harm: without it the share would be ${perCent(worst.without)}.`] : []),
    dropped.length === 0
      ? `All approved sources may be mixed freely${unclear === '' ? '' : `, though ${unclear}`}.`
      : `Mixed freely may be all but ${dropped.map(named).join(', ')}${unclear === '' ? '' : `; ${unclear}`}.`,
  ];
}
