export interface XmlFault {
  readonly code: string;
  readonly offset: number;
  readonly expected: string;
  readonly found: string;
  readonly hint?: string;
}

export interface ScannedAttribute {
  readonly name: string;
  readonly value: string;
  /** Where the value begins. */
  readonly offset: number;
}

/** What a scan tells on the way; a fault returned by `open` ends it. */
export interface XmlVisitor {
  open(name: string, offset: number, attributes: readonly ScannedAttribute[]): XmlFault | undefined;
  close(): void;
  text(value: string, offset: number): void;
}

const nameStart = /[:\p{L}_]/u;
const name = /[:\p{L}_][:\p{L}\p{M}\p{N}_.\u00b7-]*/uy;
// What XML forbids, and what it allows although it cannot be seen and can mislead: C1 controls and the marks that turn the direction of writing.
const forbidden = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;
const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
const longestName = 200;

/**
 * One pass over a text by the grammar of XML 1.0, without recursion: elements, attributes, text, character references, the five
 * entities of XML, CDATA sections, comments and processing instructions. A document type declaration ends the scan with a fault.
 * Returns the first fault, or nothing where the document is well-formed.
 */
export function scanXml(text: string, visitor: XmlVisitor): XmlFault | undefined {
  const illegal = forbidden.exec(text);
  if (illegal !== null) {
    const code = illegal[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
    return { code: 'control-character', offset: illegal.index, expected: 'text that can be seen', found: `the character U+${code}` };
  }
  const names: string[] = [];
  const starts: number[] = [];
  let rooted = false;
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < text.length) {
    const open = text.indexOf('<', at);
    const end = open < 0 ? text.length : open;
    if (end > at) {
      const run = text.slice(at, end);
      if (names.length > 0) {
        const decoded = decode(run, at);
        if (typeof decoded !== 'string') return decoded;
        visitor.text(decoded, at);
      } else if (run.trim() !== '') {
        return syntax(text, at + run.length - run.trimStart().length, rooted ? 'nothing behind the closing tag of the document' : 'a tag');
      }
    }
    if (open < 0) break;
    if (text.startsWith('<!--', open)) {
      const close = text.indexOf('-->', open + 4);
      if (close < 0) return cut(open, 'the end of the comment');
      at = close + 3;
    } else if (text.startsWith('<?', open)) {
      const close = text.indexOf('?>', open + 2);
      if (close < 0) return cut(open, 'the end of the instruction');
      at = close + 2;
    } else if (text.startsWith('<![CDATA[', open)) {
      const close = text.indexOf(']]>', open + 9);
      if (close < 0) return cut(open, 'the end of the CDATA section');
      if (names.length === 0) return syntax(text, open, 'a tag');
      visitor.text(text.slice(open + 9, close), open + 9);
      at = close + 3;
    } else if (text.startsWith('<!', open)) {
      return {
        code: 'xml-declarations', offset: open, expected: 'a document without a document type and without entity declarations', found: JSON.stringify(text.slice(open, open + 40)),
        hint: 'Such declarations can make a small file unpack into a huge one or point outside it; they are never read. Take them out.',
      };
    } else if (text.startsWith('</', open)) {
      const read = readName(text, open + 2);
      const close = skipSpace(text, open + 2 + read.length);
      const wanted = names.at(-1);
      if (wanted === undefined || read !== wanted || text[close] !== '>') return mismatch(text, open, wanted);
      names.pop();
      starts.pop();
      visitor.close();
      at = close + 1;
    } else {
      if (names.length === 0 && rooted) return syntax(text, open, 'nothing behind the closing tag of the document');
      const tag = readTag(text, open);
      if ('code' in tag) return tag;
      const fault = visitor.open(tag.name, open, tag.attributes);
      if (fault !== undefined) return fault;
      rooted = true;
      if (tag.empty) visitor.close();
      else {
        names.push(tag.name);
        starts.push(open);
      }
      at = tag.end;
    }
  }
  if (!rooted) return { code: 'empty-file', offset: 0, expected: 'an XML document', found: 'no element' };
  if (names.length > 0) return cut(starts.at(-1) ?? 0, `the closing tag </${names.at(-1)?.slice(0, 60)}>`);
  return undefined;
}

interface Tag {
  readonly name: string;
  readonly attributes: readonly ScannedAttribute[];
  readonly empty: boolean;
  readonly end: number;
}

function readTag(text: string, open: number): Tag | XmlFault {
  const tagName = readName(text, open + 1);
  if (tagName === '' || tagName.length > longestName) return syntax(text, open, 'a tag with a name');
  const attributes: ScannedAttribute[] = [];
  let at = open + 1 + tagName.length;
  for (;;) {
    const next = skipSpace(text, at);
    if (text[next] === '>') return { name: tagName, attributes, empty: false, end: next + 1 };
    if (text[next] === '/' && text[next + 1] === '>') return { name: tagName, attributes, empty: true, end: next + 2 };
    if (next >= text.length) return cut(open, 'the end of the tag');
    if (next === at) return syntax(text, next, 'a blank, or the end of the tag');
    const attribute = readAttribute(text, next);
    if ('code' in attribute) return attribute;
    attributes.push(attribute);
    // Enough to know that there are too many.
    if (attributes.length > 1000) return { name: tagName, attributes, empty: true, end: next };
    at = attribute.end;
  }
}

function readAttribute(text: string, start: number): (ScannedAttribute & { readonly end: number }) | XmlFault {
  const attributeName = readName(text, start);
  if (attributeName === '' || attributeName.length > longestName) return syntax(text, start, 'the name of an attribute');
  const equals = skipSpace(text, start + attributeName.length);
  if (text[equals] !== '=') return syntax(text, equals, `= behind the attribute ${attributeName}`);
  const quote = skipSpace(text, equals + 1);
  if (text[quote] !== '"' && text[quote] !== "'") return syntax(text, quote, 'a value in quotation marks');
  const close = text.indexOf(text[quote], quote + 1);
  if (close < 0) return cut(quote, 'a closing quotation mark');
  const raw = text.slice(quote + 1, close);
  const lessThan = raw.indexOf('<');
  if (lessThan >= 0) return syntax(text, quote + 1 + lessThan, 'no < in the value of an attribute');
  const value = decode(/[\t\n\r]/u.test(raw) ? unixLines(raw).replaceAll(/[\t\n]/gu, ' ') : raw, quote + 1);
  return typeof value === 'string' ? { name: attributeName, value, offset: quote + 1, end: close + 1 } : value;
}

function readName(text: string, at: number): string {
  if (!nameStart.test(text.charAt(at))) return '';
  name.lastIndex = at;
  return name.exec(text)?.[0] ?? '';
}

function skipSpace(text: string, from: number): number {
  let at = from;
  for (;;) {
    const code = text.charCodeAt(at);
    if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return at;
    at += 1;
  }
}

const unixLines = (text: string): string => (text.includes('\r') ? text.replaceAll(/\r\n?/gu, '\n') : text);

/** The text with its references resolved and its line ends made LF; a reference expands to one character, so nothing can grow. */
function decode(raw: string, offset: number): string | XmlFault {
  let result = '';
  let at = 0;
  for (;;) {
    const ampersand = raw.indexOf('&', at);
    if (ampersand < 0) return result + unixLines(at === 0 ? raw : raw.slice(at));
    const semicolon = raw.slice(ampersand, ampersand + 12).indexOf(';');
    const reference = semicolon < 0 ? '' : raw.slice(ampersand + 1, ampersand + semicolon);
    const character = Object.hasOwn(entities, reference) ? entities[reference] : characterOf(reference);
    if (character === undefined) {
      return {
        code: 'xml-entity', offset: offset + ampersand, expected: 'one of &lt; &gt; &amp; &quot; &apos;, or a character by its number', found: JSON.stringify(raw.slice(ampersand, ampersand + 12)),
        hint: 'Write a plain & as &amp;.',
      };
    }
    result += unixLines(raw.slice(at, ampersand)) + character;
    at = ampersand + semicolon + 1;
  }
}

function characterOf(reference: string): string | undefined {
  const match = /^#(?:x([\da-fA-F]{1,6})|(\d{1,7}))$/u.exec(reference);
  if (match === null) return undefined;
  const code = match[1] === undefined ? Number(match[2]) : Number.parseInt(match[1], 16);
  if (code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return undefined;
  const character = String.fromCodePoint(code);
  return forbidden.test(character) ? undefined : character;
}

const cut = (offset: number, expected: string): XmlFault => ({ code: 'xml-syntax', offset, expected, found: 'the end of the file', hint: 'The file may have been cut short.' });

const syntax = (text: string, offset: number, expected: string): XmlFault =>
  (offset >= text.length ? cut(text.length, expected) : { code: 'xml-syntax', offset, expected, found: JSON.stringify(text.slice(offset, offset + 30)) });

function mismatch(text: string, offset: number, wanted: string | undefined): XmlFault {
  return syntax(text, offset, wanted === undefined ? 'an opening tag' : `the closing tag </${wanted.slice(0, 60)}>`);
}
