/** Lines that a name may take over a figure. */
const mostLines = 3;

const cut = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, Math.max(1, most - 1))}…`);

/** A name in lines of about so many characters, broken between words; what three lines do not hold is cut off with an ellipsis. */
export function nameLines(name: string, characters: number): readonly string[] {
  const most = Math.max(4, Math.floor(characters));
  const lines: string[] = [];
  for (const word of name.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  const kept = lines.length <= mostLines ? lines : [...lines.slice(0, mostLines - 1), lines.slice(mostLines - 1).join(' ')];
  return kept.map((line) => cut(line, most));
}
