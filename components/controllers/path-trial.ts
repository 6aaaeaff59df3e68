import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement, RunResult } from '../../src/harmony/judgement.ts';
import type { Trier } from './joint-trial.ts';

/** No run of a document is called so: the name has blanks at its ends. */
const triedId = ' tried ';

/** The drift along parts that are picked one after the other, judged as a run of the cabin would be; the document stays as it is. */
export class PathTrial implements ReactiveController {
  /** What came of it; undefined below two parts, and until it is judged. */
  run: RunResult | undefined;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private asked: { readonly path: string; readonly of: Judgement } | undefined;

  hostDisconnected(): void {
    this.asked = undefined;
  }

  /** Follows the parts and the cabin; `by` is absent where nothing can be judged. */
  follow(parts: readonly string[], cabin: Cabin, judgement: Judgement, by: Trier | undefined): void {
    if (parts.length < 2 || by === undefined) {
      this.asked = undefined;
      this.run = undefined;
      return;
    }
    const path = JSON.stringify(parts);
    if (this.asked?.path === path && this.asked.of === judgement) return;
    if (this.asked?.path !== path) this.run = undefined;
    const asked = (this.asked = { path, of: judgement });
    by.tryOut({ ...cabin, runs: [...(cabin.runs ?? []), { id: triedId, parts }] }).then((tried) => {
      if (this.asked !== asked) return;
      this.run = tried?.runs.find(({ id }) => id === triedId);
      this.host.requestUpdate();
    }, () => {
      if (this.asked === asked) this.asked = undefined;
    });
  }
}
