import { delimitedLimits } from './delimited-text.ts';
import type { Token } from './iso28178-tokens.ts';
import { scanLines } from './iso28178-tokens.ts';
import type { TableFaults } from './table-faults.ts';

/** One table of a file: its fields, its sets, and the keywords that hold for it. */
export interface ExchangeTable {
  readonly fields: readonly Token[];
  readonly sets: readonly (readonly Token[])[];
  /** Last value of each keyword, by its name in capitals; keywords before the first table hold for all unless a later header says otherwise. */
  readonly keywords: ReadonlyMap<string, Token>;
  /** Every WEIGHTING_FUNCTION of the header: it may occur several times. */
  readonly weightings: readonly Token[];
}

type Place = 'header' | 'format' | 'data';

interface Draft {
  keywords: Map<string, Token>;
  weightings: Token[];
  fields: Token[];
  sets: Token[][];
  open: Token[];
  fieldCount: Token | undefined;
  setCount: Token | undefined;
}

/**
 * The tables of an ISO 28178 text. A set may go over several lines but ends with a line, so that a missing value cannot shift the
 * rest unseen. Counts that do not agree, sections that are not closed and values outside a section are faults.
 */
export function readExchangeTables(text: string, faults: TableFaults): ExchangeTable[] {
  const tables: ExchangeTable[] = [];
  let place: Place = 'header';
  let opened: Token | undefined;
  let weightingsInherited = true;
  let lines = 0;
  let rows = 0;
  const draft: Draft = { keywords: new Map(), weightings: [], fields: [], sets: [], open: [], fieldCount: undefined, setCount: undefined };

  const enter = (next: Place, token: Token): void => {
    if (place !== 'header') faults.add('section-not-closed', opened?.offset ?? 0, { expected: `END_DATA${place === 'format' ? '_FORMAT' : ''} before ${token.text}`, found: 'none' });
    place = next;
    opened = token;
  };
  const leave = (from: Place, token: Token): boolean => {
    const fits = place === from;
    if (!fits) faults.add('section-not-open', token.offset, { expected: `BEGIN_DATA${from === 'format' ? '_FORMAT' : ''} before it`, found: token.text });
    place = 'header';
    return fits;
  };
  const closeTable = (end: Token): void => {
    if (draft.open.length > 0) {
      faults.add('missing-cells', draft.open[0].offset, { found: `${draft.open.length} values`, expected: `${draft.fields.length}, one for each field` });
      draft.open = [];
    }
    checkCounts(draft, end, faults);
    tables.push({ fields: draft.fields, sets: draft.sets, keywords: new Map(draft.keywords), weightings: draft.weightings });
    draft.sets = [];
    draft.setCount = undefined;
    draft.fieldCount = undefined;
    weightingsInherited = true;
  };

  scanLines(text, faults, (tokens, end) => {
    lines += 1;
    const [first] = tokens;
    if (first === undefined) return true;
    const word = first.quoted ? '' : first.text.toUpperCase();
    switch (word) {
      case 'BEGIN_DATA_FORMAT':
        enter('format', first);
        draft.fields = tokens.slice(1);
        return true;
      case 'END_DATA_FORMAT': leave('format', first); return true;
      case 'BEGIN_DATA':
        enter('data', first);
        if (draft.fields.length === 0) faults.add('fields-missing', first.offset, { expected: 'BEGIN_DATA_FORMAT with the names of the fields before the data', found: 'none' });
        return true;
      case 'END_DATA':
        if (leave('data', first)) closeTable(first);
        return tables.length < 1000;
      default:
    }
    if (place === 'format') {
      draft.fields.push(...tokens);
      return draft.fields.length <= delimitedLimits.columns;
    }
    if (place === 'data') {
      rows += 1;
      if (rows > delimitedLimits.rows) {
        faults.add('too-many-rows', first.offset, { expected: `at most ${delimitedLimits.rows} lines of data`, found: 'more', hint: 'Split the file.' });
        return false;
      }
      return addLine(draft, tokens, end, faults);
    }
    if (lines === 1 && tokens.length === 1) return true;
    if (word === 'WEIGHTING_FUNCTION' && tokens[1] !== undefined) {
      if (weightingsInherited) draft.weightings = [];
      weightingsInherited = false;
      draft.weightings.push({ ...tokens[1], text: tokens.slice(1).map((token) => token.text).join(' ') });
    } else if (word === 'NUMBER_OF_FIELDS') draft.fieldCount = tokens[1];
    else if (word === 'NUMBER_OF_SETS') draft.setCount = tokens[1];
    else if (word !== 'KEYWORD' && word !== '') draft.keywords.set(word, { ...(tokens[1] ?? first), text: tokens.slice(1).map((token) => token.text).join(' ') });
    return true;
  });
  // The switch above changes `place` in a closure that the compiler does not follow.
  if ((place as Place) !== 'header' && faults.errors() === 0) {
    faults.add('section-not-closed', opened?.offset ?? 0, { expected: (place as Place) === 'data' ? 'END_DATA' : 'END_DATA_FORMAT', found: 'the end of the file', hint: 'The file may have been cut short.' });
  }
  return tables;
}

function addLine(draft: Draft, tokens: Token[], end: number, faults: TableFaults): boolean {
  const width = draft.fields.length;
  if (width === 0) return false;
  const room = width - draft.open.length;
  const extra = tokens[room];
  if (extra !== undefined) {
    faults.add('extra-cells', extra.offset, {
      found: `${draft.open.length + tokens.length} values`, expected: `${width}, one for each field, and a new set in a new line`, hint: 'A value may be missing here or in the line before.',
    });
    draft.open = [];
    return true;
  }
  draft.open.push(...tokens);
  if (draft.open.length === width) {
    draft.sets.push([...draft.open, { text: '', offset: end, quoted: false }]);
    draft.open = [];
  }
  return true;
}

function checkCounts({ fields, sets, fieldCount, setCount }: Draft, end: Token, faults: TableFaults): void {
  for (const [stated, count, what] of [[fieldCount, fields.length, 'fields'], [setCount, sets.length, 'sets']] as const) {
    const token = stated ?? end;
    if (stated === undefined) {
      faults.add('count-missing', token.offset, { severity: 'warning', expected: `NUMBER_OF_${what.toUpperCase()} ${count}`, found: 'none' });
    } else if (Number(stated.text) !== count) {
      faults.add('count-differs', token.offset, { expected: `the ${count} ${what} that are there`, found: stated.text.slice(0, 40), hint: 'The file may have been cut short.' });
    }
  }
}
