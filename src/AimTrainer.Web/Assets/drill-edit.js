import { send, why } from '/assets/live.js';
import { count, item } from '/assets/words.js';

const text = document.getElementById('text');
const lines = document.getElementById('lines');
const findings = document.getElementById('findings');
const save = document.getElementById('save');
const original = text.value;
let waiting, asked = 0, saved = false, wrongLines = new Set();

function number() {
  const has = text.value.split('\n').length;
  while (lines.children.length > has) lines.lastChild.remove();
  while (lines.children.length < has) lines.append(item('span', String(lines.children.length + 1)));
  [...lines.children].forEach((line, index) => line.classList.toggle('wrong', wrongLines.has(index + 1)));
  lines.scrollTop = text.scrollTop;
}

async function check() {
  const mine = ++asked;
  const answer = await send('POST', '/api/drills/check', undefined, text.value);
  if (mine !== asked) return;
  const problems = answer.body?.problems ?? [];
  const good = answer.ok && problems.length === 0;
  save.disabled = !good;
  text.setAttribute('aria-invalid', !good && answer.status !== 0);
  wrongLines = new Set(problems.map(problem => problem.line));
  number();
  if (answer.status === 0) { findings.replaceChildren(item('p', 'The host does not answer; the text stays here.', { class: 'note bad' })); return; }
  if (good) { findings.replaceChildren(item('p', 'Nothing is wrong with it.', { class: 'note good' })); return; }
  if (problems.length === 0) { findings.replaceChildren(item('p', why(answer), { class: 'note bad' })); return; }
  const list = document.createElement('ul');
  for (const problem of problems) {
    const li = document.createElement('li');
    const go = item('button', problem.line > 0 ? `line ${problem.line}` : 'whole', { type: 'button' });
    go.addEventListener('click', () => select(problem.line));
    const words = item('span');
    if (problem.path) words.append(item('code', problem.path));
    words.append(`found ${problem.found}; allowed: ${problem.allowed}`);
    li.append(go, words);
    list.append(li);
  }
  findings.replaceChildren(item('p', `${count(problems.length, 'mistake')} to correct:`, { class: 'note bad' }), list);
}

/** Puts the cursor on a line, with the line chosen. */
function select(line) {
  const all = text.value.split('\n'), at = Math.max(1, line);
  const start = all.slice(0, at - 1).reduce((sum, each) => sum + each.length + 1, 0);
  text.focus();
  text.setSelectionRange(start, start + (all[at - 1]?.length ?? 0));
  text.scrollTop = Math.max(0, (at - 5) * parseFloat(getComputedStyle(text).lineHeight));
}

text.addEventListener('input', () => { number(); clearTimeout(waiting); waiting = setTimeout(check, 200); });
text.addEventListener('scroll', () => { lines.scrollTop = text.scrollTop; });
addEventListener('beforeunload', event => { if (!saved && text.value !== original) event.preventDefault(); });
document.getElementById('edit').addEventListener('submit', async event => {
  event.preventDefault();
  let drill;
  try { drill = JSON.parse(text.value); } catch { await check(); return; }
  const answer = await send('PUT', `/api/drills/${encodeURIComponent(drill.id)}`, undefined, text.value);
  if (answer.ok) { saved = true; location.href = `/drills/${encodeURIComponent(drill.id)}`; return; }
  findings.prepend(item('p', why(answer), { class: 'note bad' }));
});
number();
check();
