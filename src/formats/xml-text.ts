/** An element to be written: with children, or with text. */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: readonly XmlNode[] | string;
}

export const element = (name: string, attributes: Readonly<Record<string, string>>, content: readonly XmlNode[] | string = []): XmlNode => ({ name, attributes, content });

/** The document as text of XML 1.0 in UTF-8, two blanks a level. The same tree gives the same text. */
export const xmlText = (root: XmlNode): string => `<?xml version="1.0" encoding="UTF-8"?>\n${lines(root, '').join('\n')}\n`;

function lines({ name, attributes, content }: XmlNode, indent: string): string[] {
  const open = `${indent}<${name}${Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`).join('')}`;
  if (content.length === 0) return [`${open}/>`];
  if (typeof content === 'string') return [`${open}>${escaped(content)}</${name}>`];
  return [`${open}>`, ...content.flatMap((child) => lines(child, `${indent}  `)), `${indent}</${name}>`];
}

const references: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', '\t': '&#9;', '\n': '&#10;', '\r': '&#13;' };
// Characters that XML cannot hold, and those that cannot be seen, are left out.
const escaped = (text: string): string =>
  text.replaceAll(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufffe\uffff]/g, '').replaceAll(/[&<>"\t\n\r]/gu, (character) => references[character] ?? '');
