import { follow, send, why, Outbox } from '/assets/live.js';
import { boardUnder, drawLane, drawStrip, stripRange } from '/assets/drawing.js';
import { count, mark, missWords, number, percent, phaseWords, progress, targetWords } from '/assets/words.js';

const $ = id => document.getElementById(id);
const session = $('session');
const station = Number(session.dataset.station);
const lane = JSON.parse($('lane-profile').textContent);
const safety = [
  'Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery.',
  'Nobody looks into the projector\u2019s beam.',
  'Stop when the hand, wrist or arm hurts; this program asks and never tells anyone how much to throw.',
];

let state = null;
let picks = {};
let shownAim = '';
const outbox = new Outbox(station, () => showWaiting());

follow(station, 'coach', show, up => { $('link').hidden = up; if (up) outbox.flush(); });

function show(next) {
  state = next;
  const open = Boolean(state.phase) && state.phase !== 'ended';
  $('phase').textContent = state.phase ? `${state.bowler}${state.simulated ? ' (simulated)' : ''}, ${state.drill.name}: ${phaseWords[state.phase]}` : 'free';
  $('empty').hidden = open;
  session.hidden = !state.phase || state.phase === 'waiting';
  showCautions(state.phase === 'waiting');
  $('log').hidden = state.phase !== 'throwing' && state.phase !== 'paused';
  document.querySelectorAll('[data-act], [data-ask]').forEach(button => { button.disabled = !open; });
  document.querySelector('[data-act="pause"]').hidden = state.phase === 'paused';
  document.querySelector('[data-act="resume"]').hidden = state.phase !== 'paused';
  if (!state.phase) return;
  drawLane(document.querySelector('svg.lane'), lane, state.aim, state.lastShots, state.hand);
  showFigures();
  showStrips();
  showShots();
  showWaiting();
}

function showCautions(now) {
  $('cautions').hidden = !now;
  if (!now) return;
  $('caution-list').replaceChildren(...[...state.drill.cautions, ...safety.filter(words => !state.drill.cautions.includes(words))].map(words => item('li', words)));
  $('arm').hidden = !state.drill.asksHowArmFeels;
}

function item(name, text, attributes = {}) {
  const node = document.createElement(name);
  node.textContent = text;
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
}

function showFigures() {
  const figure = (term, value, small) => {
    const box = document.createElement('div');
    const dd = item('dd', value);
    if (small) dd.append(item('small', small));
    box.append(item('dt', term), dd);
    return box;
  };
  const rows = [];
  if (state.block) rows.push(figure(`Block ${state.block.number} of ${state.block.of}: ${state.block.name}`, progress(state.block)));
  for (const target of state.summary?.perTarget ?? []) {
    rows.push(figure(state.summary.perTarget.length > 1 ? `Hits, ${target.name}` : 'Hits', target.graded ? `${target.hits} of ${target.graded}` : 'none yet',
      target.graded ? `${percent(target.hitRateLow)} to ${percent(target.hitRateHigh)} is what this many can tell` : ''));
  }
  if (state.place > 0) rows.push(figure('Place of the line', String(state.place)));
  rows.push(figure('Points', String(state.points ?? 0)));
  $('figures').replaceChildren(...rows);
}

function showStrips() {
  const targets = state.aim?.targets ?? [];
  const aim = JSON.stringify([state.nextNumber, targets.map(each => [each.name, each.target])]);
  if (aim !== shownAim) {
    shownAim = aim;
    picks = Object.fromEntries(targets.map(each => [each.name, null]));
    $('strips').replaceChildren(...targets.map(makeStrip));
  }

  targets.forEach(paintStrip);
  $('send').textContent = `Log shot ${state.nextNumber}`;
  $('undo').disabled = !state.lastShots.some(shot => !shot.voidReason);
}

function makeStrip({ name, target }) {
  const box = document.createElement('div');
  box.className = 'strip';
  box.dataset.target = name;
  const head = item('div', '', { class: 'head' });
  head.append(item('span', `${name}: ${targetWords(target)}`), item('output', '', { 'aria-live': 'polite' }));
  const [low, high] = stripRange(target);
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  for (const [key, value] of Object.entries({
    role: 'slider', tabindex: 0, 'aria-label': `Board where the ball crossed ${name}`, 'aria-valuemin': low, 'aria-valuemax': high,
  })) svg.setAttribute(key, value);
  svg.addEventListener('pointerdown', event => { svg.setPointerCapture(event.pointerId); pick(name, boardUnder(svg, event, target, state.hand)); });
  svg.addEventListener('pointermove', event => { if (event.buttons) pick(name, boardUnder(svg, event, target, state.hand)); });
  svg.addEventListener('keydown', event => {
    const right = state.hand === 'left' ? 0.5 : -0.5;
    const step = { ArrowRight: right, ArrowLeft: -right, ArrowUp: 0.5, ArrowDown: -0.5, PageUp: 5, PageDown: -5 }[event.key];
    if (event.key === 'Enter') { log(); return; }
    if (step === undefined) return;
    event.preventDefault();
    pick(name, Math.min(44, Math.max(-4, (picks[name] ?? target.centreBoard) + step)));
  });
  const pad = item('div', '', { class: 'pad', role: 'group', 'aria-label': `Boards for ${name}` });
  const boards = [];
  for (let board = Math.ceil(low); board <= Math.floor(high); board++) boards.push(board);
  if (state.hand !== 'left') boards.reverse();
  for (const board of boards) {
    const inside = Math.abs(board - target.centreBoard) <= target.widthBoards / 2;
    const button = item('button', String(board), { type: 'button', 'data-board': board });
    if (inside) button.className = 'in';
    button.addEventListener('click', () => pick(name, board));
    pad.append(button);
  }

  const half = item('button', '+\u00bd', { type: 'button', 'aria-label': 'half a board more' });
  half.addEventListener('click', () => pick(name, (picks[name] ?? target.centreBoard) + 0.5));
  const gutterNear = item('button', 'gutter', { type: 'button', 'aria-label': 'own gutter' });
  gutterNear.addEventListener('click', () => pick(name, -4));
  const unseen = item('button', 'not seen', { type: 'button' });
  unseen.addEventListener('click', () => pick(name, null));
  for (const wide of [gutterNear, unseen]) wide.style.gridColumn = 'span 2';
  pad.append(half, gutterNear, unseen);
  box.append(head, svg, pad);
  return box;
}

function paintStrip({ name, target }) {
  const box = [...document.querySelectorAll('.strip')].find(each => each.dataset.target === name);
  if (!box) return;
  const svg = box.querySelector('svg');
  const crossings = state.lastShots.filter(shot => !shot.voidReason)
    .map(shot => shot.targets.find(result => result.name === name)?.crossing.board).filter(board => board !== null && board !== undefined);
  drawStrip(svg, target, crossings, picks[name], state.hand);
  const picked = picks[name];
  svg.setAttribute('aria-valuenow', picked ?? target.centreBoard);
  svg.setAttribute('aria-valuetext', picked === null ? 'not seen' : `board ${number(picked)}`);
  box.querySelector('output').textContent = picked === null ? 'not seen' : `board ${number(picked)}`;
  box.querySelectorAll('[data-board]').forEach(button => button.setAttribute('aria-pressed', Number(button.dataset.board) === picked));
}

function pick(name, board) {
  picks[name] = board === null ? null : Math.min(44, Math.max(-4, board));
  state.aim.targets.forEach(paintStrip);
}

function log() {
  const targets = state.aim?.targets ?? [];
  const crossings = targets.filter(each => picks[each.name] !== null)
    .map(each => ({ feet: each.target.distanceFeet, board: picks[each.name] }));
  const speed = Number.parseFloat($('speed').value.replace(',', '.'));
  outbox.add(state.sessionId, { crossings, ...(speed >= 1 && speed <= 40 ? { speedMph: speed } : {}) });
  $('speed').value = '';
  picks = Object.fromEntries(targets.map(each => [each.name, null]));
  targets.forEach(paintStrip);
}

function showShots() {
  $('shots').replaceChildren(...state.lastShots.map((shot, index) => {
    const [sign, kind, words] = mark(shot.held);
    const li = document.createElement('li');
    if (index === 0) li.className = 'just';
    li.append(item('strong', String(shot.number)), item('span', sign, { class: `mark ${kind}`, 'aria-label': words, role: 'img' }));
    const told = shot.targets.map(result => `${shot.targets.length > 1 ? `${result.name}: ` : ''}${missWords(result.missBoards, state.hand)}${result.grade ? `, ${result.grade.name}` : ''}`).join('; ');
    const text = item('span', shot.voidReason ? `does not count: ${shot.voidReason}` : told);
    if (shot.voidReason) text.className = 'void';
    li.append(text);
    if (!shot.voidReason && shot.comparability.isComparable !== true) li.append(item('span', shot.comparability.reasons.join('; '), { class: 'quiet' }));
    if (!shot.voidReason) {
      const tools = item('span', '', { class: 'tools' });
      const correct = item('button', 'Correct', { type: 'button', 'aria-label': `Correct shot ${shot.number}` });
      correct.addEventListener('click', () => askCorrect(shot));
      const no = item('button', 'Void', { type: 'button', 'aria-label': `Void shot ${shot.number}` });
      no.addEventListener('click', () => askVoid(shot));
      tools.append(correct, no);
      li.append(tools);
    }
    return li;
  }));
}

function showWaiting() {
  $('waiting').replaceChildren(...outbox.waiting.map(one => {
    const p = item('p', one.refused
      ? `A tapped shot was not taken: ${one.refused} `
      : `A tapped shot waits to be sent${one.session === state?.sessionId ? '' : ' (of an earlier session)'}. `, { class: one.refused ? 'note bad' : 'note' });
    if (one.refused) {
      const ok = item('button', 'Understood', { type: 'button' });
      ok.addEventListener('click', () => outbox.dismiss(one.shot.id));
      p.append(ok);
    }
    return p;
  }));
}

async function act(action) {
  const answer = await send('POST', `/api/stations/${station}/actions`, action);
  return answer.ok ? null : why(answer);
}

/** Asks for some words and acts on them; what the host refuses is said in the same place. */
function ask(title, yes, fields, make) {
  $('ask-title').textContent = title;
  $('ask-yes').textContent = yes;
  $('ask-wrong').hidden = true;
  $('ask-fields').replaceChildren(...fields.map(({ id, label, value = '', choices, ...rest }) => {
    const box = item('div', '', { class: 'field' });
    const input = choices ? document.createElement('select') : document.createElement('input');
    input.id = id;
    for (const [key, of] of Object.entries(rest)) input.setAttribute(key, of);
    if (choices) input.append(...choices.map(choice => item('option', choice, { value: choice })));
    input.value = value || (choices ? choices[0] : '');
    box.append(item('label', label, { for: id }), input);
    return box;
  }));
  const dialog = $('ask');
  dialog.querySelector('form').onsubmit = async event => {
    if (event.submitter?.value !== 'yes') return;
    event.preventDefault();
    const action = make();
    const wrong = typeof action === 'string' ? action : await act(action);
    if (wrong === null) { dialog.close(); return; }
    $('ask-wrong').textContent = wrong;
    $('ask-wrong').hidden = false;
  };
  dialog.showModal();
}

const numeric = text => text.trim() === '' ? null : Number(text.replace(',', '.'));

const askVoid = shot => ask(`Shot ${shot.number} does not count`, 'Void it', [{ id: 'reason', label: 'Why', required: '', maxlength: 500, value: 'slipped' }],
  () => ({ kind: 'void', number: shot.number, reason: $('reason').value }));

const askCorrect = shot => ask(`Correct shot ${shot.number}`, 'Correct it',
  shot.targets.map((result, index) => ({ id: `board-${index}`, label: `Board at ${result.name} (empty: not seen)`, inputmode: 'decimal', value: result.crossing.board === null ? '' : String(result.crossing.board) })),
  () => {
    const crossings = shot.targets.map((result, index) => ({ feet: result.target.distanceFeet, board: numeric($(`board-${index}`).value) })).filter(one => one.board !== null);
    if (crossings.some(one => Number.isNaN(one.board))) return 'a board is a number such as 12.5';
    const speed = shot.shot.speed ? { speedMph: shot.shot.speed.mph, speedAt: shot.shot.speed.at } : {};
    return { kind: 'correct', number: shot.number, shot: { crossings, ...speed } };
  });

const asks = {
  target: () => ask('Change the target from now on', 'Change it', [
    { id: 'which', label: 'Which', choices: (state.aim?.targets ?? []).map(each => each.name) },
    { id: 'width', label: 'Width in boards, 0.5 to 20 (empty: as it is)', inputmode: 'decimal' },
    { id: 'centre', label: 'Centre board, 0.5 to 39.5 (empty: as it is)', inputmode: 'decimal' },
  ], () => {
    const width = numeric($('width').value), centre = numeric($('centre').value);
    if (Number.isNaN(width) || Number.isNaN(centre)) return 'boards are numbers such as 3.5';
    return { kind: 'target', target: $('which').value, ...(width === null ? {} : { widthBoards: width }), ...(centre === null ? {} : { centreBoard: centre }) };
  }),
  note: () => ask('A note for the record', 'Keep it', [{ id: 'words', label: 'Words', required: '', maxlength: 2000 }], () => ({ kind: 'note', text: $('words').value })),
  end: () => ask('End the session', 'End it', [{ id: 'reason', label: 'Why (may be empty)', maxlength: 500 }],
    () => ({ kind: 'end', ...($('reason').value.trim() ? { why: $('reason').value } : {}) })),
};

document.querySelectorAll('[data-ask]').forEach(button => button.addEventListener('click', () => asks[button.dataset.ask]()));
document.querySelectorAll('[data-act]').forEach(button => button.addEventListener('click', async () => say(await act({ kind: button.dataset.act }))));
$('send').addEventListener('click', log);
$('undo').addEventListener('click', async () => {
  const last = state.lastShots.find(shot => !shot.voidReason);
  if (last) say(await act({ kind: 'void', number: last.number, reason: 'taken back' }));
});
$('begin').addEventListener('click', async () => {
  const arm = $('arm-words').value.trim();
  if (arm) await act({ kind: 'note', text: `Arm: ${arm}` });
  say(await act({ kind: 'begin' }));
});
addEventListener('resize', () => state?.aim?.targets.forEach(paintStrip));

function say(wrong) {
  if (wrong === null) return;
  const p = item('p', wrong, { class: 'note bad', role: 'alert' });
  $('waiting').prepend(p);
  setTimeout(() => p.remove(), 8000);
}
