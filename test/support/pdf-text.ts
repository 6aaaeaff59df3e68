import { inflateSync } from 'node:zlib';

/**
 * A reader of the PDF that a Chromium prints, by ISO 32000-1 and no more than that needs: objects in the open, streams deflated or plain, text shown by
 * codes of one or two bytes whose meaning stands in the `ToUnicode` map of their font (9.10.3), places by text and graphics matrices (8.3.4, 9.4.2).
 */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** All that is shown, in the order of the file, with where its first letter starts, in points from the lower left. */
  readonly runs: readonly { readonly text: string; readonly x: number; readonly y: number; readonly size: number }[];
  /** What the page lets show of its content: the largest rectangle that it clips to. */
  readonly clip: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number } | undefined;
}

type Matrix = readonly [number, number, number, number, number, number];
const product = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2], m[0] * n[1] + m[1] * n[3], m[2] * n[0] + m[3] * n[2], m[2] * n[1] + m[3] * n[3], m[4] * n[0] + m[5] * n[2] + n[4], m[4] * n[1] + m[5] * n[3] + n[5],
];
const unit: Matrix = [1, 0, 0, 1, 0, 0];

export function readPdf(file: Uint8Array): readonly PdfPage[] {
  const bytes = Buffer.from(file);
  const text = bytes.toString('latin1');
  const objects = new Map<string, { readonly head: string; readonly stream: () => string }>();
  for (const found of text.matchAll(/(?:^|[\r\n])(\d+) 0 obj\s/g)) {
    const start = found.index + found[0].length;
    const end = text.indexOf('endobj', start);
    const at = text.indexOf('stream', start);
    const streamed = at >= 0 && at < end;
    const head = text.slice(start, streamed ? at : end);
    objects.set(found[1] ?? '', {
      head,
      stream: () => {
        const from = at + (text[at + 6] === '\r' ? 8 : 7);
        const raw = bytes.subarray(from, from + Number(/\/Length (\d+)/.exec(head)?.[1]));
        return (head.includes('/FlateDecode') ? inflateSync(raw) : raw).toString('latin1');
      },
    });
  }
  const head = (id: string | undefined): string => objects.get(id ?? '')?.head ?? '';
  const fonts = new Map<string, Codes>();
  const fontOf = (id: string): Codes => {
    const known = fonts.get(id) ?? meanings(objects.get(/\/ToUnicode (\d+) 0 R/.exec(head(id))?.[1] ?? '')?.stream() ?? '');
    fonts.set(id, known);
    return known;
  };
  const pages = [...objects.values()].filter((one) => /\/Type\s*\/Page\b(?!s)/.test(one.head));
  return pages.map((page): PdfPage => {
    const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(page.head);
    const resources = /\/Resources (\d+) 0 R/.exec(page.head);
    const named = new Map([...(/\/Font\s*<<([\s\S]*?)>>/.exec(resources === null ? page.head : head(resources[1]))?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)].map((font) => [font[1] ?? '', font[2] ?? '']));
    const contents = [...(/\/Contents\s*(\[[^\]]*\]|\d+ 0 R)/.exec(page.head)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map((one) => objects.get(one[1] ?? '')?.stream() ?? '').join('\n');
    return { width: Number(box?.[1]), height: Number(box?.[2]), ...shown(contents, (name) => fontOf(named.get(name) ?? '')) };
  });
}

interface Codes {
  /** Hexadecimal digits of a code. */
  readonly digits: number;
  readonly meaning: ReadonlyMap<string, string>;
}

/** What each code of a font means. */
function meanings(map: string): Codes {
  const codes = new Map<string, string>();
  const read = (hex: string): string => (hex.match(/.{4}/g) ?? []).map((four) => String.fromCharCode(Number.parseInt(four, 16))).join('');
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) for (const [, code, meaning] of (block ?? '').matchAll(/<(\w+)>\s*<(\w+)>/g)) codes.set((code ?? '').toUpperCase(), read(meaning ?? ''));
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, first] of (block ?? '').matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const [low, high] = [Number.parseInt(from ?? '', 16), Number.parseInt(to ?? '', 16)];
      for (let code = low; code <= high; code += 1) codes.set(code.toString(16).toUpperCase().padStart((from ?? '').length, '0'), read((Number.parseInt(first ?? '', 16) + code - low).toString(16).padStart(4, '0')));
    }
  }
  return { digits: /begincodespacerange\s*<(\w+)>/.exec(map)?.[1]?.length ?? 4, meaning: codes };
}

function shown(contents: string, fontOf: (name: string) => Codes): Pick<PdfPage, 'runs' | 'clip'> {
  const runs: { text: string; x: number; y: number; size: number }[] = [];
  const tokens = contents.match(/<[0-9A-Fa-f\s]*>|\((?:\\.|[^\\)])*\)|\[|\]|<<|>>|\/[^\s/<>[\]()]+|[^\s/<>[\]()]+/g) ?? [];
  let [graphics, line, font, size]: [Matrix, Matrix, Codes, number] = [unit, unit, meanings(''), 0];
  let [rectangle, clip]: [number[], PdfPage['clip']] = [[], undefined];
  const kept: Matrix[] = [];
  let operands: string[] = [];
  const matrix = (): Matrix => operands.slice(-6).map(Number) as unknown as Matrix;
  for (const token of tokens) {
    switch (token) {
      case 'q': kept.push(graphics); break;
      case 'Q': graphics = kept.pop() ?? unit; break;
      case 'cm': graphics = product(matrix(), graphics); break;
      case 're': rectangle = operands.slice(-4).map(Number); break;
      case 'W': case 'W*': {
        const [x, y, width, height] = rectangle as [number, number, number, number];
        const [one, other] = [[x, y], [x + width, y + height]].map(([px, py]) => [graphics[0] * (px ?? 0) + graphics[4], graphics[3] * (py ?? 0) + graphics[5]]) as [[number, number], [number, number]];
        const made = { left: Math.min(one[0], other[0]), right: Math.max(one[0], other[0]), bottom: Math.min(one[1], other[1]), top: Math.max(one[1], other[1]) };
        if (clip === undefined || made.top - made.bottom > clip.top - clip.bottom) clip = made;
        break;
      }
      case 'BT': line = unit; break;
      case 'Tm': line = matrix(); break;
      case 'Td': line = product([1, 0, 0, 1, Number(operands.at(-2)), Number(operands.at(-1))], line); break;
      case 'Tf': [font, size] = [fontOf((operands.at(-2) ?? '').slice(1)), Number(operands.at(-1))]; break;
      case 'Tj': case 'TJ': {
        const place = product(line, graphics);
        const text = operands.filter((one) => one.startsWith('<')).flatMap((hex) => hex.replace(/[<>\s]/g, '').toUpperCase().match(new RegExp(`.{${font.digits}}`, 'g')) ?? []).map((code) => font.meaning.get(code) ?? '\ufffd').join('');
        if (text !== '') runs.push({ text, x: place[4], y: place[5], size: size * Math.hypot(place[2], place[3]) });
        break;
      }
      default: operands.push(token); continue;
    }
    operands = [];
  }
  return { runs, clip };
}

/** The text of pages without the white between letters, since a printer places words and not spaces. */
export const closed = (text: string): string => text.normalize('NFKC').replaceAll(/[\s\u00ad]+/g, '');
export const textOfPages = (pages: readonly PdfPage[]): string => closed(pages.flatMap(({ runs }) => runs.map(({ text }) => text)).join(''));
