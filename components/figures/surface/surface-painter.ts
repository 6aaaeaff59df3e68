import type { HeightMap } from '../../../src/texture/index.ts';
import type { Painting, PainterMessage, PainterReply, StripPicture, StripRequest } from './strip-request.ts';

interface Job {
  readonly owner: object;
  readonly request: StripRequest;
  readonly first: boolean;
  readonly done: (picture: StripPicture | undefined) => void;
}

/**
 * Has strips painted off the main thread, by one worker with one WebGL context for the whole page. One strip at a time; what an owner
 * asks anew replaces what it has waiting. Where no worker can be had every picture is undefined, and strips stay plain.
 */
export class SurfacePainter {
  private worker: Worker | undefined;
  private broken = false;
  private preferred: Painting | undefined;
  private readonly waiting: Job[] = [];
  private running: { readonly id: number; readonly job: Job } | undefined;
  private readonly maps = new WeakMap<HeightMap, number>();
  private count = 0;

  /** Paints on the processor even where there is WebGL, or with WebGL again; for comparing the two. */
  prefer(painting: Painting): void {
    this.preferred = painting;
    if (this.worker !== undefined) this.send(this.worker, { kind: 'prefer', painting });
  }

  /** A picture of the strip; undefined if it was overtaken or given up, or cannot be painted. `first` goes before those that are not. */
  paint(owner: object, request: StripRequest, first = false): Promise<StripPicture | undefined> {
    this.giveUp(owner);
    return new Promise((done) => {
      if (this.broken) {
        done(undefined);
        return;
      }
      this.waiting.push({ owner, request, first, done });
      this.next();
    });
  }

  /** Drops what the owner has waiting. */
  giveUp(owner: object): void {
    const place = this.waiting.findIndex((job) => job.owner === owner);
    if (place >= 0) this.waiting.splice(place, 1)[0].done(undefined);
  }

  /** Number by which requests name a measured map; it is handed over once. */
  mapNumber(map: HeightMap): number {
    let id = this.maps.get(map);
    const worker = this.start();
    if (id === undefined) {
      id = this.count += 1;
      this.maps.set(map, id);
      if (worker !== undefined) this.send(worker, { kind: 'map', id, map });
    }
    return id;
  }

  private start(): Worker | undefined {
    if (this.worker !== undefined || this.broken) return this.worker;
    try {
      const worker = new Worker(new URL('./painter.worker.ts', import.meta.url), { type: 'module', name: 'painter' });
      worker.addEventListener('message', ({ data }: MessageEvent<PainterReply>) => this.answered(data));
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        this.fail();
      });
      this.worker = worker;
      if (this.preferred !== undefined) this.send(worker, { kind: 'prefer', painting: this.preferred });
      return worker;
    } catch {
      this.fail();
      return undefined;
    }
  }

  private send(worker: Worker, message: PainterMessage): void {
    worker.postMessage(message);
  }

  private next(): void {
    if (this.running !== undefined || this.waiting.length === 0) return;
    const worker = this.start();
    if (worker === undefined) return;
    const place = Math.max(0, this.waiting.findIndex(({ first }) => first));
    const [job] = this.waiting.splice(place, 1);
    const id = this.count += 1;
    this.running = { id, job };
    this.send(worker, { kind: 'paint', id, request: job.request });
  }

  private answered(reply: PainterReply): void {
    if (this.running?.id !== reply.id) return;
    const { job } = this.running;
    this.running = undefined;
    this.next();
    job.done(reply.kind === 'picture' ? reply.picture : undefined);
  }

  private fail(): void {
    this.broken = true;
    this.worker?.terminate();
    this.worker = undefined;
    const { job } = this.running ?? {};
    this.running = undefined;
    for (const { done } of [...(job === undefined ? [] : [job]), ...this.waiting.splice(0)]) done(undefined);
  }
}

/** The one of the page. */
export const surfacePainter = new SurfacePainter();
