import { StripPainter } from './strip-painter.ts';
import type { PainterMessage, PainterReply } from './strip-request.ts';

const painter = new StripPainter();

const answer = (reply: PainterReply, transfer: Transferable[] = []): void => postMessage(reply, { transfer });

addEventListener('message', ({ data }: MessageEvent<PainterMessage>) => {
  if (data.kind === 'prefer') painter.prefer(data.painting);
  else if (data.kind === 'map') painter.take(data.id, data.map);
  else {
    try {
      const picture = painter.paint(data.request);
      answer({ kind: 'picture', id: data.id, picture }, [picture.pixels.buffer]);
    } catch (error) {
      answer({ kind: 'failed', id: data.id, message: String(error) });
    }
  }
});
