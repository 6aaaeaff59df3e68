import { provideMathjs } from '../rules/mathjs-parser.ts';
import { Session } from './session.ts';
import type { SessionQuestion } from './session.ts';
import type { Numbered, SessionReply, SessionRequest } from './session-protocol.ts';
import { tellingPace } from './telling-pace.ts';
import { hearLine, tellLine } from './worker-line.ts';

provideMathjs();

const session = new Session((joints) => tellingPace(joints, () => performance.now()));

/** A judgement by another book makes room for what is asked meanwhile this often, ms. */
const slice = 40;
/** The judgement by another book that goes on; a new object for the next one. */
let turn: object | undefined;

async function judgeBy(ruleBook: string | object, answer: (reply: SessionReply) => void): Promise<void> {
  const mine = (turn = {});
  const steps = session.judgeBy(ruleBook);
  let paused = performance.now();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return answer(step.value);
    if (performance.now() - paused < slice) continue;
    answer({ kind: 'progress', share: step.value });
    await new Promise((resolve) => setTimeout(resolve));
    if (turn !== mine) return answer({ kind: 'overtaken' });
    paused = performance.now();
  }
}

/** The text of a file is read here, so that not even its bytes hold the page. */
async function open(text: Pick<Blob, 'text'>, file: string, tell: (reply: SessionReply) => void): Promise<SessionReply> {
  try {
    return session.answer({ kind: 'open', text: await text.text(), file }, tell);
  } catch (reason) {
    if (!(reason instanceof DOMException)) throw reason;
    return { kind: 'refused', issues: [{ code: 'not-readable', severity: 'error', found: reason.message, expected: 'a cabin file that can be read', hint: 'Check the name and that the file is still there, then open it again.' }] };
  }
}

// A bug must reach the page as one, not as silence.
const thrown = (fault: unknown): unknown => setTimeout(() => { throw fault; });

hearLine<Numbered<SessionRequest>>(({ number, content }) => {
  const answer = (reply: SessionReply): void => tellLine<Numbered<SessionReply>>({ number, content: reply });
  if (content.kind === 'look') session.look(content.look).then(answer, thrown);
  else if (content.kind === 'text') answer({ kind: 'text', text: new Blob([session.text()], { type: 'application/json' }) });
  else if (content.kind === 'judge by') judgeBy(content.ruleBook, answer).catch(thrown);
  else {
    if (content.kind !== 'try') turn = undefined;
    if (content.kind === 'open' && typeof content.text !== 'string') open(content.text, content.file, answer).then(answer, thrown);
    else answer(session.answer(content as SessionQuestion, answer));
  }
});
