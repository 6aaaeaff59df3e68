import type { AddressInfo } from 'node:net';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { get, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fileOf, listen, staticServer } from '../../src/cli/static-server.ts';

const base = mkdtempSync(join(tmpdir(), 'adjoin-server-'));
const folder = join(base, 'app');
const server = staticServer(folder);
let port = 0;

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>x</title>');
  writeFileSync(join(folder, 'assets', 'a.js'), 'export {};');
  writeFileSync(join(folder, '.secret'), 'no');
  writeFileSync(join(base, 'outside.txt'), 'no');
  symlinkSync(join(base, 'outside.txt'), join(folder, 'link.txt'));
  port = await listen(server, 41_730);
});
afterAll(() => {
  server.close();
  rmSync(base, { recursive: true });
});

interface Reply {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

const fetched = (path: string, method = 'GET'): Promise<Reply> => new Promise((settle, fail) => {
  request({ host: '127.0.0.1', port, path, method }, (response) => {
    let body = '';
    response.setEncoding('utf8').on('data', (chunk: string) => { body += chunk; }).on('end', () => settle({ status: response.statusCode, headers: response.headers, body }));
  }).on('error', fail).end();
});

test('files have their type, a strict policy and are not cached', async () => {
  const page = await fetched('/?open=x');
  expect(page.status).toBe(200);
  expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
  expect(page.headers['cache-control']).toBe('no-cache');
  expect(page.headers['x-content-type-options']).toBe('nosniff');
  const policy = String(page.headers['content-security-policy']);
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toMatch(/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')|\*/);
  expect((await fetched('/assets/a.js')).headers['content-type']).toBe('text/javascript; charset=utf-8');
});

test.each(['/../outside.txt', '/%2e%2e/outside.txt', '/assets/..%2f..%2foutside.txt', '/..%5coutside.txt', '/link.txt', '/.secret', '/%00', '/%zz', '/assets', '/missing.js'])('%s is not found', async (path) => {
  const reply = await fetched(path);
  expect(reply.status).toBe(404);
  expect(reply.body).toBe('not found\n');
});

test('only GET and HEAD are answered', async () => {
  expect((await fetched('/', 'POST')).status).toBe(405);
  const head = await fetched('/', 'HEAD');
  expect(head.status).toBe(200);
  expect(head.body).toBe('');
});

test('a path of the folder stays inside it', () => {
  expect(fileOf(folder, '/')).toMatch(/index\.html$/);
  expect(fileOf(folder, 'index.html')).toBeUndefined();
});

test('a port in use gives way to the next free one, on the loopback interface', async () => {
  const second = staticServer(folder);
  const next = await listen(second, port);
  expect(next).toBeGreaterThan(port);
  expect((second.address() as AddressInfo).address).toBe('127.0.0.1');
  await new Promise<void>((settle) => { get({ host: '127.0.0.1', port: next }, (response) => { response.resume().on('end', () => settle()); }); });
  second.close();
});
