/** Words of the glossary that explain what a field asks for, by its label; fields that speak for themselves are not listed. */
export const fieldWords: ReadonlyMap<string, string> = new Map([
  ['Family', 'family'], ['kL', 'kL'], ['kC', 'kL'], ['kH', 'kL'], ['Decision rule', 'decision rule'], ['Confidence', 'confidence'], ['Observer, °', 'observer'], ['Geometry', 'geometry'],
  ['Colour is', 'standing'], ['Allowance for unlike families', 'family'], ['Difference formula', 'dL*, da*, db*'], ['Metamerism limit', 'metamerism'], ['Gloss limit, GU', 'gloss unit, GU'], ['Gloss limit', 'gloss unit, GU'],
  ['Cap on |dL*| in the dark', 'component limit'], ['Sd of one gloss reading', 'assumed spread'], ['Near miss is', 'near miss'], ['Tool cost', 'tool and set-up'], ['Set-up cost', 'tool and set-up'],
  ['Carry-over, left as it is', 'carry-over'], ['Module', 'module'], ['Stage', 'stage'], ['Stage that is judged', 'stage'], ['Mirror of', 'borrowed'], ['Outlier', 'stands out'], ['Master', 'master'], ['Parent master', 'drift'],
  ['Material', 'material'], ['Lot', 'lot'], ['Grade', 'grade'],
]);
