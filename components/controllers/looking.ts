import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Looks } from '../../src/workers/session-look.ts';
import type { Desk } from './desk.ts';
import type { OpenCabin } from './open-cabin.ts';

interface Host extends ReactiveControllerHost {
  readonly open: OpenCabin;
  readonly desk: Desk;
}

/** Keeps what a view looks at of the judged cabin: asked of the worker when it is first wanted, and again after every judgement. What was there stays shown meanwhile. */
export class Looking<W extends 'quality' | 'masters' | 'requests'> implements ReactiveController {
  value: Looks[W] | undefined;
  /** It could not be reckoned. */
  failed = false;

  constructor(host: Host, what: W, wanted: () => boolean = () => true) {
    this.host = host;
    this.what = what;
    this.wanted = wanted;
    host.addController(this);
  }

  private readonly host: Host;
  private readonly what: W;
  private readonly wanted: () => boolean;
  /** The judgement that `value` belongs to, or will. */
  private of: OpenCabin['judgement'] | undefined;
  private cabin: string | undefined;

  hostUpdate(): void {
    const { open, desk } = this.host;
    if (open === undefined || open.judging || open.judgement === this.of || !this.wanted()) return;
    const { judgement } = open;
    if (this.cabin !== open.cabin.id) this.value = undefined;
    this.cabin = open.cabin.id;
    this.of = judgement;
    this.failed = false;
    desk.look({ what: this.what }).then((value) => {
      if (this.of !== judgement) return;
      this.value = value as Looks[W];
      this.host.requestUpdate();
    }, (reason: unknown) => {
      if (this.of !== judgement) return;
      this.failed = !(reason instanceof DOMException && reason.name === 'AbortError');
      this.of = undefined;
      if (this.failed) this.host.requestUpdate();
    });
  }
}
