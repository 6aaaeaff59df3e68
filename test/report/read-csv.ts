/** A reader of RFC 4180 text of its own, for tests: rows by the names of the header. */
export function readCsv(text: string): Record<string, string>[] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (quoted) {
      if (character !== '"') cell += character;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (character === '"') quoted = true;
    else if (character === ',' || character === '\n') {
      rows.at(-1)?.push(cell.replace(/\r$/, ''));
      cell = '';
      if (character === '\n') rows.push([]);
    } else cell += character;
  }
  const [header, ...body] = rows.filter((row) => row.length > 0);
  return body.map((row) => {
    if (row.length !== header.length) throw new Error(`row of ${row.length} cells under ${header.length} columns: ${row.join(' | ')}`);
    return Object.fromEntries(header.map((name, index) => [name, row[index]]));
  });
}
