import { send, why } from '/assets/live.js';

const text = document.getElementById('text');
const findings = document.getElementById('findings');
const save = document.getElementById('save');
let waiting, asked = 0;

async function check() {
  const mine = ++asked;
  const sent = await send('POST', '/api/drills/check', undefined, text.value);
  const answer = sent.status === 0 ? null : sent;
  if (mine !== asked) return;
  const problems = answer?.body?.problems ?? [];
  save.disabled = !answer?.ok || problems.length > 0;
  text.setAttribute('aria-invalid', problems.length > 0);
  findings.replaceChildren();
  if (!answer) { findings.append(line('The host does not answer; the text stays here.', 'note bad')); return; }
  if (problems.length === 0) { findings.append(line('Nothing is wrong with it.', 'note')); return; }
  const list = document.createElement('ul');
  for (const problem of problems) {
    const item = document.createElement('li');
    if (problem.line > 0) {
      const go = document.createElement('button');
      go.type = 'button';
      go.textContent = `line ${problem.line}`;
      go.addEventListener('click', () => select(problem.line));
      item.append(go, ' ');
    }
    item.append(`${problem.path || ''} found ${problem.found}; allowed: ${problem.allowed}`);
    list.append(item);
  }
  findings.append(line(`${problems.length} to correct:`, 'note bad'), list);
}

function line(words, kind) {
  const p = document.createElement('p');
  p.className = kind;
  p.textContent = words;
  return p;
}

/** Puts the cursor on a line, with the line chosen. */
function select(number) {
  const lines = text.value.split('\n');
  const start = lines.slice(0, number - 1).reduce((sum, each) => sum + each.length + 1, 0);
  text.focus();
  text.setSelectionRange(start, start + (lines[number - 1]?.length ?? 0));
  text.scrollTop = Math.max(0, (number - 5) * parseFloat(getComputedStyle(text).lineHeight));
}

text.addEventListener('input', () => { clearTimeout(waiting); waiting = setTimeout(check, 250); });
document.getElementById('edit').addEventListener('submit', async event => {
  event.preventDefault();
  let drill;
  try { drill = JSON.parse(text.value); } catch { await check(); return; }
  const answer = await send('PUT', `/api/drills/${encodeURIComponent(drill.id)}`, undefined, text.value);
  if (answer.ok) { location.href = `/drills/${drill.id}`; return; }
  findings.prepend(line(why(answer), 'note bad'));
});
check();
