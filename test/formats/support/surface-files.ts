import { crc32, deflateSync } from 'node:zlib';

/** Writers for tests, by the formats' own rules and with nothing of the readers. */
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export function sdfText(width: number, height: number, values: readonly (number | string)[], more: Readonly<Record<string, string>> = {}): string {
  const fields: Record<string, string> = {
    ManufacID: 'invented', CreateDate: '010120260900', ModDate: '010120260900', NumPoints: String(width), NumProfiles: String(height),
    Xscale: '1E-5', Yscale: '2E-5', Zscale: '1E-6', Zresolution: '-1', Compression: '0', DataType: '7', CheckType: '0', ...more,
  };
  const rows = Array.from({ length: height }, (_, row) => values.slice(row * width, (row + 1) * width).join(' '));
  return ['aISO-1.0', ...Object.entries(fields).map(([name, value]) => `${name} = ${value}`), '*', ...rows, '*', ''].join('\r\n');
}

export interface BinarySdf {
  readonly width: number;
  readonly height: number;
  readonly type: number;
  readonly size: number;
  readonly write: (view: DataView, at: number, index: number) => void;
  readonly zScale?: number;
}

export function sdfBytes({ width, height, type, size, write, zScale = 1e-6 }: BinarySdf): Uint8Array {
  const bytes = new Uint8Array(81 + width * height * size);
  bytes.set(bytesOf('bISO-1.0invented  010120260900010120260900'));
  const view = new DataView(bytes.buffer);
  view.setUint16(42, width, true);
  view.setUint16(44, height, true);
  [1e-5, 2e-5, zScale, -1].forEach((value, index) => view.setFloat64(46 + 8 * index, value, true));
  bytes[79] = type;
  for (let index = 0; index < width * height; index += 1) write(view, 81 + index * size, index);
  return bytes;
}

export interface X3pFields {
  readonly width: number;
  readonly height: number;
  readonly type: string;
  readonly increment?: string;
  readonly offset?: string;
  readonly record3?: string;
  readonly xType?: string;
  readonly feature?: string;
}

export function mainXml({ width, height, type, increment, offset, record3, xType = 'I', feature = 'SUR' }: X3pFields): string {
  const data = record3 ?? '<DataLink><PointDataLink>bindata/data.bin</PointDataLink></DataLink>';
  return `<?xml version="1.0" encoding="UTF-8"?>
<p:ISO5436_2 xmlns:p="http://www.opengps.eu/2008/ISO5436_2">
  <Record1><Revision>ISO5436 - 2000</Revision><FeatureType>${feature}</FeatureType>
    <Axes>
      <CX><AxisType>${xType}</AxisType><DataType>D</DataType><Increment>1.0e-5</Increment><Offset>0</Offset></CX>
      <CY><AxisType>I</AxisType><DataType>D</DataType><Increment>2.0e-5</Increment><Offset>0</Offset></CY>
      <CZ><AxisType>A</AxisType><DataType>${type}</DataType>${increment === undefined ? '' : `<Increment>${increment}</Increment>`}${offset === undefined ? '' : `<Offset>${offset}</Offset>`}</CZ>
    </Axes>
  </Record1>
  <Record2><Date>2026-01-01T09:00:00</Date><Creator>invented</Creator></Record2>
  <Record3><MatrixDimension><SizeX>${width}</SizeX><SizeY>${height}</SizeY><SizeZ>1</SizeZ></MatrixDimension>${data}</Record3>
  <Record4><ChecksumFile>md5checksum.hex</ChecksumFile></Record4>
</p:ISO5436_2>`;
}

export interface Png {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly values: readonly number[];
  readonly colour?: number;
  readonly alpha?: readonly number[];
  readonly interlaced?: boolean;
  readonly extra?: readonly (readonly [type: string, data: Uint8Array])[];
  /** Bytes of the picture data instead of those that follow from the values. */
  readonly raw?: Uint8Array;
}

export function pngChunk(type: string, data: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(12 + data.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  chunk.set(bytesOf(type), 4);
  chunk.set(data, 8);
  view.setUint32(8 + data.length, crc32(chunk.subarray(4, 8 + data.length)));
  return chunk;
}

const joined = (parts: readonly Uint8Array[]): Uint8Array => Uint8Array.from(parts.flatMap((part) => [...part]));

function paeth(a: number, b: number, c: number): number {
  const estimate = a + b - c;
  const distances = [a, b, c].map((value) => Math.abs(estimate - value));
  return [a, b, c][distances.indexOf(Math.min(...distances))]!;
}

/** Rows with a filter each, one kind after the other. */
function filtered(rows: readonly (readonly number[])[], size: number): number[] {
  return rows.flatMap((row, index) => {
    const kind = index % 5;
    const above = rows[index - 1] ?? row.map(() => 0);
    const predicted = row.map((_, at) => {
      const [left, up, corner] = [row[at - size] ?? 0, above[at] ?? 0, at >= size ? above[at - size] ?? 0 : 0];
      return [0, left, up, Math.floor((left + up) / 2), paeth(left, up, corner)][kind]!;
    });
    return [kind, ...row.map((value, at) => (value - predicted[at]! + 256) % 256)];
  });
}

const passes = [[0, 0, 8, 8], [4, 0, 8, 8], [0, 4, 4, 8], [2, 0, 4, 4], [0, 2, 2, 4], [1, 0, 2, 2], [0, 1, 1, 2]] as const;

export function pngBytes({ width, height, depth, values, colour, alpha, interlaced = false, extra = [], raw }: Png): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header.set([depth, colour ?? (alpha ? 4 : 0), 0, 0, interlaced ? 1 : 0], 8);
  const sample = (value: number): number[] => (depth === 16 ? [value >> 8, value & 255] : [value]);
  const point = (x: number, y: number): number[] => [...sample(values[y * width + x]!), ...(alpha ? sample(alpha[y * width + x]!) : [])];
  const picture = (): number[] => (interlaced ? passes : [[0, 0, 1, 1] as const]).flatMap(([left, top, stepX, stepY]) => {
    const rows: number[][] = [];
    for (let y = top; y < height; y += stepY) {
      const row: number[] = [];
      for (let x = left; x < width; x += stepX) row.push(...point(x, y));
      if (row.length > 0) rows.push(row);
    }
    return filtered(rows, (depth / 8) * (alpha ? 2 : 1));
  });
  const packed = new Uint8Array(deflateSync(raw ?? Uint8Array.from(picture())));
  const half = Math.ceil(packed.length / 2);
  return joined([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), pngChunk('IHDR', header), ...extra.map(([type, data]) => pngChunk(type, data)),
    pngChunk('IDAT', packed.slice(0, half)), pngChunk('IDAT', packed.slice(half)), pngChunk('IEND', new Uint8Array()),
  ]);
}

export function fourBytes(...numbers: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(4 * numbers.length);
  numbers.forEach((value, index) => new DataView(bytes.buffer).setUint32(4 * index, value));
  return bytes;
}
