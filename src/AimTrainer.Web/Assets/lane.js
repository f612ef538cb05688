import { follow, send, why, Outbox } from '/assets/live.js';
import { boardUnder, drawBalls, drawLane, drawStrip, laneScale, stripRange, Lens } from '/assets/drawing.js';
import { ballSigns, count, feedWords, item, keepFocus, lengthWords, mark, missWords, number, percent, phaseWords, placeWords, progress, targetWords, towelWords, turnWords, useLane } from '/assets/words.js';

const $ = id => document.getElementById(id);
const session = $('session');
const station = Number(session.dataset.station);
const lane = JSON.parse($('lane-profile').textContent);
const drawing = document.querySelector('svg.lane');
const lens = new Lens();
const safety = [
  'Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery.',
  'Nobody looks into the projector\u2019s beam.',
  'Stop when the hand, wrist or arm hurts; this program asks and never tells anyone how much to throw.',
];

let state = null;
let picks = new Map(); // By target: a board, null for not seen; absent until somebody says.
let active = null; // The target that the pad is for.
let shownAim = '', shownStrips = '', lastTold = '';
let thrown = null; // In a comparison the ball that was said to be thrown; null for the one that is due.
let shownTurn = '', clearedUpTo = 0;
const outbox = new Outbox(station, () => showWaiting());
useLane(lane);

follow(station, 'coach', show, (up, words) => {
  $('link').hidden = up;
  $('link').textContent = words ?? 'The host does not answer. Go on: shots you tap are kept here and sent once when it is back.';
  if (up) outbox.flush();
}, ({ feeds }) => {
  if (feeds?.[station]) $('feed').textContent = feedWords(feeds[station]);
});

const targets = () => state?.aim?.targets ?? [];

function show(next) {
  state = next;
  dispatchEvent(new CustomEvent('aimtrainer:station', { detail: state }));
  const open = Boolean(state.phase) && state.phase !== 'ended';
  const working = state.phase === 'throwing' || state.phase === 'paused';
  $('phase').textContent = state.phase ? `${state.bowler}${state.simulated ? ' (simulated)' : ''} · ${state.drill.name} · ${phaseWords[state.phase]}` : 'free';
  $('feed').textContent = feedWords(state.feed);
  $('empty').hidden = open;
  $('over').hidden = state.phase !== 'ended';
  if (state.sessionId) for (const id of ['record', 'so-far']) $(id).href = `/records/${encodeURIComponent(state.sessionId)}`;
  session.hidden = !state.phase || state.phase === 'waiting';
  $('log').hidden = !working;
  $('coach').hidden = !working;
  $('paused').hidden = state.phase !== 'paused';
  showCautions(state.phase === 'waiting');
  showTurn(working ? state.turn : null);
  document.querySelector('[data-act="pause"]').hidden = state.phase === 'paused';
  document.querySelector('[data-act="resume"]').hidden = state.phase !== 'paused';
  if (state.phase && state.phase !== 'waiting') {
    showFigures();
    showAim();
    showStrips();
    showShots();
  }

  showWaiting();
}

/** In a comparison: who throws next, how far each ball is at this line, and with which ball it really was. */
function showTurn(turn) {
  $('turn').hidden = !turn;
  if (!turn) { shownTurn = ''; thrown = null; return; }
  const { main, more } = turnWords(turn);
  $('turn-main').textContent = main;
  $('turn-more').textContent = more;
  $('turn-towel').textContent = towelWords;
  $('turn-balls').replaceChildren(...turn.balls.map((cell, place) => {
    const li = item('li', '', cell.role === turn.due.role ? { class: 'due' } : {});
    li.append(item('span', ballSigns[place], { 'aria-hidden': 'true', class: place % 2 ? 'sign odd' : 'sign' }), item('b', cell.ball), item('span', `${cell.good} of ${cell.goodWanted} good`), item('small', count(cell.throws, 'throw')));
    return li;
  }));
  const made = JSON.stringify([state.sessionId, state.nextNumber, turn.due.name]);
  if (made === shownTurn) return;
  shownTurn = made;
  thrown = null;
  $('heard').textContent = `${main}. ${more}`;
  keepFocus($('turn'), () => $('turn-thrown').replaceChildren(...turn.balls.map(({ ball }) => {
    const label = document.createElement('label');
    const radio = Object.assign(document.createElement('input'), { type: 'radio', name: 'thrown', value: ball, checked: ball === turn.due.name });
    radio.dataset.key = `thrown ${ball}`;
    radio.addEventListener('change', () => { thrown = ball === turn.due.name ? null : ball; });
    label.append(radio, ball);
    return label;
  })));
}

function showCautions(now) {
  $('cautions').hidden = !now;
  if (!now) return;
  $('caution-list').replaceChildren(...[...state.drill.cautions, ...safety.filter(words => !state.drill.cautions.includes(words))].map(words => item('li', words)));
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
  if (state.block) rows.push(figure(`Block ${state.block.number} of ${state.block.of}`, progress(state.block), state.block.name));
  for (const target of state.summary?.perTarget ?? []) {
    rows.push(figure(state.summary.perTarget.length > 1 ? `Hits, ${target.name}` : 'Hits', target.graded ? `${target.hits} of ${target.graded}` : 'none yet',
      target.graded ? `true rate: ${percent(target.hitRateLow)} to ${percent(target.hitRateHigh)}` : ''));
  }
  if (state.place > 0) rows.push(figure('Place of the line', String(state.place)));
  rows.push(figure('Points', String(state.points ?? 0)));
  $('figures').replaceChildren(...rows);
}

function showAim() {
  $('now').replaceChildren(...(targets().length
    ? targets().flatMap(({ name, target }) => [item('strong', placeWords(target)), item('span', `${name}, ${lengthWords(target.widthBoards)} wide`)])
    : [item('span', state.phase === 'ended' ? 'The session is over.' : 'No target is shown.')]));
  drawing.setAttribute('aria-label', `The lane seen from the approach. ${targets().map(({ name, target }) => `${name}: ${targetWords(target)}`).join('; ')}`);
}

function paint() {
  const scale = drawLane(drawing, lane, state.aim, state.turn ? [] : state.lastShots, state.hand, targets().filter(each => typeof picks.get(each.name) === 'number')
    .map(each => ({ feet: each.target.distanceFeet, board: picks.get(each.name) })));
  drawBalls(drawing, scale, (state.turn ? state.lastOfEach : []).filter(shot => shot.number > clearedUpTo)
    .map(shot => ({ place: state.turn.balls.findIndex(cell => cell.role === shot.compared.role), shot })));
  $('scale').textContent = `Seen from the approach. Boards are to scale; lengths are drawn ${number(scale.shorter, 0)} times shorter.`;
  targets().forEach(paintStrip);
  paintPad();
  const unpicked = targets().filter(each => typeof picks.get(each.name) !== 'number');
  $('send').textContent = `Log shot ${state.nextNumber}${unpicked.length && unpicked.length < targets().length ? ` (${unpicked.map(each => each.name).join(', ')} not seen)` : ''}`;
  $('undo').disabled = state.turns ? !state.turns.last : !state.lastShots.some(shot => !shot.voidReason);
  if (state.turns?.last) $('undo').setAttribute('aria-label', `Take back ${state.turns.last.bowler}'s shot ${state.turns.last.number}`);
  else $('undo').removeAttribute('aria-label');
}

function showStrips() {
  const aim = JSON.stringify([state.sessionId, state.nextNumber, targets().map(each => [each.name, each.target])]);
  if (aim !== shownAim) {
    shownAim = aim;
    picks = new Map();
    active = targets()[0]?.name ?? null;
    lens.hide();
  }

  const strips = JSON.stringify([state.hand, targets().map(each => [each.name, stripRange(each.target)])]);
  if (strips !== shownStrips) {
    shownStrips = strips;
    keepFocus($('log'), () => $('strips').replaceChildren(...targets().map(makeStrip)));
  }

  paint();
}

const targetOf = name => targets().find(each => each.name === name)?.target;

function makeStrip({ name }) {
  const box = item('div', '', { class: 'strip', 'data-target': name });
  const head = item('div', '', { class: 'head' });
  const what = item('div', '', { class: 'what' });
  what.append(item('b'), item('small'));
  const chosen = item('div', '', { class: 'pick' });
  const nudge = (by, sign, words) => {
    const button = item('button', sign, { type: 'button', 'aria-label': `${name}: half a board to the ${words}`, 'data-key': `${name} ${words}` });
    button.addEventListener('click', () => pick(name, (picks.get(name) ?? targetOf(name).centreBoard) + by));
    return button;
  };
  const right = state.hand === 'left' ? 0.5 : -0.5;
  chosen.append(nudge(-right, '\u25c2', 'left'), item('output'), nudge(right, '\u25b8', 'right'));
  head.append(what, chosen);
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  const attributes = { role: 'slider', tabindex: 0, 'aria-label': `Board where the ball crossed, ${name}`, 'data-key': `strip ${name}` };
  for (const [key, value] of Object.entries(attributes)) svg.setAttribute(key, value);
  drag(svg, () => name, event => boardUnder(svg, event, targetOf(name), state.hand));
  svg.addEventListener('keydown', event => {
    const step = { ArrowRight: right, ArrowLeft: -right, ArrowUp: 0.5, ArrowDown: -0.5, PageUp: 5, PageDown: -5 }[event.key];
    if (event.key === 'Enter') { log(); return; }
    if (step === undefined) return;
    event.preventDefault();
    pick(name, (picks.get(name) ?? targetOf(name).centreBoard) + step);
  });
  svg.addEventListener('focus', () => { active = name; paint(); });
  box.append(head, svg);
  return box;
}

/** Picks while a finger or a mouse is down, with the lens above it; a scroll that the browser takes over picks nothing. */
function drag(svg, nameOf, boardOf) {
  let name = null, before;
  const move = event => {
    const board = boardOf(event);
    pick(name, board, false);
    lens.show(event, picks.get(name), targetOf(name), state.hand);
  };
  svg.addEventListener('pointerdown', event => {
    name = nameOf(event);
    if (!name || (event.pointerType === 'mouse' && event.button !== 0)) { name = null; return; }
    before = picks.get(name);
    svg.setPointerCapture(event.pointerId);
    move(event);
  });
  svg.addEventListener('pointermove', event => { if (name && targetOf(name)) move(event); });
  svg.addEventListener('pointerup', () => { if (name && targetOf(name)) toNext(name); name = null; lens.hide(); });
  svg.addEventListener('pointercancel', () => {
    if (name && before === undefined) picks.delete(name); else if (name) picks.set(name, before);
    name = null;
    lens.hide();
    paint();
  });
}

let tapped = null; // The target nearest to where the lane was touched; it stays the one until the finger leaves.
drag(drawing, event => {
  if ($('log').hidden) return null;
  const feet = laneScale(drawing, lane, state.hand).feetAt(event.clientY - drawing.getBoundingClientRect().top);
  tapped = [...targets()].sort((a, b) => Math.abs(a.target.distanceFeet - feet) - Math.abs(b.target.distanceFeet - feet))[0]?.name ?? null;
  return tapped;
}, event => Math.round(laneScale(drawing, lane, state.hand).boardAt(event.clientX - drawing.getBoundingClientRect().left) * 2) / 2);

function paintStrip({ name, target }) {
  const box = [...document.querySelectorAll('.strip')].find(each => each.dataset.target === name);
  if (!box) return;
  const svg = box.querySelector('svg'), output = box.querySelector('output');
  const crossings = state.lastShots.filter(shot => !shot.voidReason)
    .map(shot => shot.targets.find(result => result.name === name)?.crossing.board).filter(board => board !== null && board !== undefined);
  const picked = picks.get(name), [low, high] = stripRange(target);
  drawStrip(svg, target, crossings, picked, state.hand);
  box.classList.toggle('active', targets().length > 1 && name === active);
  box.querySelector('b').textContent = name;
  box.querySelector('small').textContent = targetWords(target);
  svg.setAttribute('aria-valuemin', Math.min(low, picked ?? low));
  svg.setAttribute('aria-valuemax', Math.max(high, picked ?? high));
  svg.setAttribute('aria-valuenow', picked ?? target.centreBoard);
  const words = picked === undefined ? 'not picked yet' : picked === null ? 'not seen' : gutterWords(picked) ?? `board ${number(picked)}`;
  svg.setAttribute('aria-valuetext', words);
  output.textContent = picked === undefined ? 'tap a board' : words;
  output.className = picked === undefined || picked === null ? 'none' : '';
}

const gutterWords = board => board < 0.5 ? `${state.hand === 'left' ? 'left' : 'right'} gutter` : board > 39.5 ? `${state.hand === 'left' ? 'right' : 'left'} gutter` : null;

/** One pad, for the target that is active: boards as they lie on the lane, then what is no board. */
function paintPad() {
  const pad = $('pad'), target = targetOf(active);
  if (!target) return;
  const [low, high] = stripRange(target);
  const made = JSON.stringify([active, low, high, state.hand]);
  if (pad.dataset.made !== made) {
    pad.dataset.made = made;
    pad.setAttribute('aria-label', `Boards, ${active}`);
    $('pad-else').setAttribute('aria-label', `Gutters, or not seen, ${active}`);
    const boards = [];
    for (let board = Math.ceil(low); board <= Math.floor(high); board++) boards.push(board);
    if (state.hand !== 'left') boards.reverse();
    const button = (text, value) => {
      const one = item('button', text, { type: 'button', 'data-key': `pad ${text}`, ...(value === null ? {} : { 'data-board': value }) });
      one.addEventListener('click', () => { const name = active; pick(name, value); toNext(name); });
      return one;
    };
    const own = state.hand === 'left' ? 'left' : 'right', far = own === 'left' ? 'right' : 'left';
    const gutters = [button(`${far} gutter`, 44), button(`${own} gutter`, -4)];
    keepFocus($('log'), () => {
      pad.replaceChildren(...boards.map(board => button(String(board), board)));
      $('pad-else').replaceChildren(...(own === 'left' ? gutters.reverse() : gutters), button('not seen', null));
    });
  }

  for (const button of [...pad.children, ...$('pad-else').children]) {
    const value = button.dataset.board === undefined ? null : Number(button.dataset.board);
    button.classList.toggle('in', value !== null && Math.abs(value - target.centreBoard) <= target.widthBoards / 2);
    button.setAttribute('aria-pressed', picks.has(active) && picks.get(active) === value);
  }
}

function pick(name, board, heard = true) {
  if (name === null || !targetOf(name)) return;
  picks.set(name, board === null ? null : Math.min(44, Math.max(-4, board)));
  active = name;
  $('hint').hidden = true;
  paint();
  if (heard) $('heard').textContent = board === null ? `${name}: not seen` : `${name}: ${gutterWords(picks.get(name)) ?? `board ${number(picks.get(name))}`}`;
}

/** After one target of a line, the pad is for the next that nobody has spoken of. */
function toNext(name) {
  active = targets().find(each => each.name !== name && !picks.has(each.name))?.name ?? name;
  paint();
}

function log() {
  if (!state || $('log').hidden) return;
  if (picks.size === 0) {
    $('hint').hidden = false;
    return;
  }

  const crossings = targets().filter(each => typeof picks.get(each.name) === 'number')
    .map(each => ({ feet: each.target.distanceFeet, board: picks.get(each.name) }));
  const speed = Number.parseFloat($('speed').value.replace(',', '.'));
  if ($('speed').value.trim() && !(speed >= 1 && speed <= 40)) {
    say('The speed is a number of miles per hour from 1 to 40, such as 17.5, or nothing.');
    return;
  }

  outbox.add(
    state.sessionId, state.aimKey, targets().map(each => targetWords(each.target)).join(', then '),
    { crossings, ...(speed ? { speedMph: speed } : {}), ...(state.turn && thrown ? { ball: thrown } : {}) });
  $('speed').value = '';
  picks = new Map();
  active = targets()[0]?.name ?? null;
  paint();
}

const saidOf = shot => shot.targets
  .map(result => `${shot.targets.length > 1 ? `${result.name}: ` : ''}${missWords(result.missBoards, state.hand)}${result.grade ? `, ${result.grade.name}` : ''}`)
  .join('; ');

function showShots() {
  const newest = state.lastShots[0];
  const told = newest ? `Shot ${newest.number}: ${newest.voidReason ? `does not count, ${newest.voidReason}` : `${mark(newest.held)[2]}, ${saidOf(newest)}`}` : '';
  const fresh = told !== lastTold && lastTold !== '';
  lastTold = told;
  if (fresh) $('heard').textContent = told;
  $('none').hidden = state.lastShots.length > 0;
  $('last-shot').replaceChildren(...(newest && !newest.voidReason
    ? [item('span', mark(newest.held)[0], { class: `mark ${mark(newest.held)[1]}`, 'aria-hidden': 'true' }), item('span', told)]
    : [item('span', told, { class: 'quiet' })]));
  const before = state.turns?.last;
  if (before) {
    const [sign, kind, words] = mark(before.held);
    $('last-shot').replaceChildren(item('span', sign, { class: `mark ${kind}`, 'aria-hidden': 'true' }), item('span', `${before.bowler}'s shot ${before.number}: ${words}`));
  }
  keepFocus($('shots'), () => $('shots').replaceChildren(...state.lastShots.map((shot, index) => {
    const [sign, kind, words] = mark(shot.held);
    const li = document.createElement('li');
    if (index === 0 && fresh) li.className = 'just';
    const counts = !shot.voidReason;
    li.append(
      item('span', String(shot.number), { class: 'n' }),
      item('span', counts ? sign : '\u2013', { class: `mark ${counts ? kind : 'quiet'}`, 'aria-label': counts ? words : 'does not count', role: 'img' }));
    const text = item('span', '', { class: 'said' });
    text.append(shot.voidReason ? item('span', `does not count: ${shot.voidReason}`, { class: 'quiet' }) : saidOf(shot));
    if (!shot.voidReason && shot.compared) {
      const { ball, due, notGood, checkWasDue } = shot.compared;
      text.append(item('small', `${checkWasDue && ball === due ? 'lane check with ' : ''}${ball}${ball === due ? '' : `, not ${due}, which is still due`}${notGood ? `; no good throw: ${notGood}` : ''}`));
    } else if (!shot.voidReason && shot.comparability.isComparable === false) text.append(item('small', `not the same throw: ${shot.comparability.reasons.join('; ')}`));
    li.append(text);
    if (!shot.voidReason && state.phase !== 'ended') {
      const tools = item('span', '', { class: 'tools' });
      const correct = item('button', 'Correct', { type: 'button', 'aria-label': `Correct shot ${shot.number}`, 'data-key': `correct ${shot.number}` });
      correct.addEventListener('click', () => askCorrect(shot));
      const no = item('button', 'Void', { type: 'button', 'aria-label': `Void shot ${shot.number}`, 'data-key': `void ${shot.number}` });
      no.addEventListener('click', () => askVoid(shot));
      tools.append(correct, no);
      li.append(tools);
    }
    return li;
  })));
}

function showWaiting() {
  const all = outbox.waiting, sent = all.filter(one => !one.refused);
  const lines = [];
  if (sent.length) {
    const other = sent.filter(one => one.session !== state?.sessionId).length;
    const wait = `${count(sent.length, 'tapped shot')} ${sent.length === 1 ? 'waits' : 'wait'} to be sent${other ? ` (${other} of an earlier session)` : ''}.`;
    const safe = outbox.isSafe ? '' : ' This browser keeps nothing: leave this page open.';
    lines.push(item('p', `${wait} The next target appears when they have arrived.${safe}`, { class: 'note', id: 'unsent' }));
  }
  for (const one of all.filter(each => each.refused && each.otherAim)) lines.push(askOtherAim(one));
  for (const one of all.filter(each => each.refused && !each.otherAim)) {
    const p = item('div', '', { class: 'note bad row' });
    const ok = item('button', 'Understood', { type: 'button' });
    ok.addEventListener('click', () => outbox.drop(one.key));
    p.append(item('span', `A tapped shot was not taken (${crossingWords(one)}): ${one.refused}`), ok);
    lines.push(p);
  }
  $('waiting').replaceChildren(...lines);
}

const crossingWords = one => one.shot.crossings.map(each => `board ${number(each.board)} at ${number(each.feet, 1)} ft`).join(', ') || 'not seen';

/** The target that was drawn is the target that is graded: what was thrown at another one is for the coach to decide. */
function askOtherAim(one) {
  const box = item('div', '', { class: 'note bad other-aim' });
  const count = item('button', 'Count it for the target that is due now', { type: 'button' });
  count.addEventListener('click', () => outbox.countNow(one));
  const out = item('button', 'Leave it out', { type: 'button' });
  out.addEventListener('click', () => outbox.drop(one.key));
  const row = item('p', '', { class: 'row' });
  row.append(count, out);
  const what = `A shot (${crossingWords(one)}) was tapped for ${one.words}.`;
  box.append(item('p', `${what} That target is no longer the one on the lane, so the shot was not graded. What becomes of it?`), row);
  return box;
}

/** What is pressed is meant for the session that is shown then, and once: a dialog can outlive both its session and a lost answer. */
const meant = () => ({ session: state?.sessionId, id: `press-${[...crypto.getRandomValues(new Uint32Array(3))].map(each => each.toString(36)).join('')}` });

async function act(action, { session, id } = meant()) {
  const of = session ? `?session=${encodeURIComponent(session)}` : '';
  const answer = await send('POST', `/api/stations/${station}/actions${of}`, { ...action, id });
  return answer.ok ? null : why(answer);
}

/** Asks for some words and acts on them; what the host refuses is said in the same place. */
function ask(title, yes, fields, make) {
  $('ask-title').textContent = title;
  $('ask-yes').textContent = yes;
  $('ask-wrong').hidden = true;
  $('ask-fields').replaceChildren(...fields.map(({ id, label, value = '', choices, quick = [], ...rest }) => {
    const box = item('div', '', { class: 'field' });
    const input = document.createElement(choices ? 'select' : 'input');
    input.id = id;
    for (const [key, of] of Object.entries(rest)) input.setAttribute(key, of);
    if (choices) input.append(...choices.map(([text, of]) => item('option', text, { value: of })));
    input.value = value || (choices ? choices[0][1] : '');
    box.append(item('label', label, { for: id }), input);
    if (quick.length) {
      const row = item('div', '', { class: 'quick' });
      for (const words of quick) {
        const button = item('button', words, { type: 'button' });
        button.addEventListener('click', () => { input.value = words; });
        row.append(button);
      }
      box.append(row);
    }
    return box;
  }));
  const dialog = $('ask');
  const asked = meant();
  dialog.querySelector('form').onsubmit = async event => {
    event.preventDefault();
    const action = make();
    const wrong = typeof action === 'string' ? action : await act(action, asked);
    if (wrong === null) { dialog.close(); return; }
    $('ask-wrong').textContent = wrong;
    $('ask-wrong').hidden = false;
  };
  dialog.showModal();
}

const numeric = text => text.trim() === '' ? null : Number(text.replace(',', '.'));

const askVoid = shot => ask(`Shot ${shot.number} does not count`, 'Void it', [
  { id: 'reason', label: 'Why', required: '', maxlength: 500, autocomplete: 'off', quick: ['slipped', 'over the foul line', 'a pin fell late', 'typed wrongly'] },
], () => $('reason').value.trim() ? { kind: 'void', number: shot.number, reason: $('reason').value.trim() } : 'Say in a word why, for the record.');

const askCorrect = shot => ask(`Correct shot ${shot.number}`, 'Correct it',
  [
    ...shot.targets.map((result, index) => ({
      id: `board-${index}`, label: `Board, ${result.name} at ${number(result.target.distanceFeet, 1)} ft (empty: not seen)`, inputmode: 'decimal', autocomplete: 'off',
      value: result.crossing.board === null ? '' : String(result.crossing.board),
    })),
    ...(shot.compared && state.turn ? [{
      id: 'ball-thrown', label: 'Thrown with', value: shot.compared.ball,
      choices: [...new Set([...state.turn.balls.map(cell => cell.ball), shot.compared.ball])].map(ball => [ball, ball]),
    }] : []),
  ],
  () => {
    const crossings = shot.targets.map((result, index) => ({ feet: result.target.distanceFeet, board: numeric($(`board-${index}`).value) })).filter(one => one.board !== null);
    if (crossings.some(one => Number.isNaN(one.board))) return 'A board is a number such as 12.5.';
    const speed = shot.shot.speed ? { speedMph: shot.shot.speed.mph, speedAt: shot.shot.speed.at } : {};
    const ball = shot.compared && state.turn ? { ball: $('ball-thrown').value } : {};
    return { kind: 'correct', number: shot.number, shot: { crossings, ...speed, ...ball } };
  });

const scopes = [['this target', 'aim'], ['the whole block', 'block']];
const asks = {
  skip: () => ask('Pass over', 'Pass over it', [{ id: 'scope', label: 'What', choices: scopes }], () => ({ kind: 'skip', scope: $('scope').value })),
  repeat: () => ask('Throw again', 'Throw it again', [{ id: 'scope', label: 'What', choices: scopes }], () => ({ kind: 'repeat', scope: $('scope').value })),
  target: () => ask('Change the target from now on', 'Change it', [
    { id: 'which', label: 'Which', choices: targets().map(each => [`${each.name}: ${targetWords(each.target)}`, each.name]) },
    { id: 'width', label: 'Width in boards, 0.5 to 20 (empty: as it is)', inputmode: 'decimal', autocomplete: 'off' },
    { id: 'centre', label: 'Centre board, 0.5 to 39.5 (empty: as it is)', inputmode: 'decimal', autocomplete: 'off' },
  ], () => {
    const width = numeric($('width').value), centre = numeric($('centre').value);
    if (Number.isNaN(width) || Number.isNaN(centre)) return 'Boards are numbers such as 3.5.';
    if (width === null && centre === null) return 'Give a width, a centre, or both.';
    return { kind: 'target', target: $('which').value, ...(width === null ? {} : { widthBoards: width }), ...(centre === null ? {} : { centreBoard: centre }) };
  }),
  note: () => ask('A note for the record', 'Keep it', [{ id: 'words', label: 'Words', required: '', maxlength: 2000, autocomplete: 'off' }],
    () => ({ kind: 'note', text: $('words').value })),
  end: () => ask('End the session', 'End it', [
    { id: 'reason', label: 'Why (may be empty)', maxlength: 500, autocomplete: 'off', quick: ['time is up', 'the arm hurts', 'lane trouble'] },
  ],
    () => ({ kind: 'end', ...($('reason').value.trim() ? { why: $('reason').value } : {}) })),
};

$('ask-no').addEventListener('click', () => $('ask').close());
document.querySelectorAll('[data-ask]').forEach(button => button.addEventListener('click', () => asks[button.dataset.ask]()));
document.querySelectorAll('[data-act]').forEach(button => button.addEventListener('click', async () => say(await act({ kind: button.dataset.act }))));
$('turn-clear').addEventListener('click', () => { clearedUpTo = state.nextNumber - 1; paint(); });
$('send').addEventListener('click', log);
$('undo').addEventListener('click', async () => {
  // On a shared lane the turn has passed on: what is taken back is the lane's last shot, whoever threw it.
  const last = state.turns ? state.turns.last : state.lastShots.find(shot => !shot.voidReason);
  if (last) say(await act({ kind: 'void', number: last.number, reason: 'taken back' }, { ...meant(), ...(state.turns ? { session: last.sessionId } : {}) }));
});
for (const radio of document.querySelectorAll('[name="arm"]')) radio.addEventListener('change', () => { $('sore').hidden = radio.value !== 'sore'; });
$('begin').addEventListener('click', async () => {
  const arm = [document.querySelector('[name="arm"]:checked')?.value, $('arm-words').value.trim()].filter(Boolean).join(': ');
  const wrong = arm ? await act({ kind: 'note', text: `Arm ${arm}` }) : null;
  say(wrong ?? await act({ kind: 'begin' }));
});
new ResizeObserver(() => { if (state?.phase && state.phase !== 'waiting') paint(); }).observe(session);
addEventListener('aimtrainer:unit', () => { if (state) show(state); });

function say(wrong) {
  $('wrong').hidden = wrong === null;
  $('wrong-words').textContent = wrong ?? '';
}

$('wrong-seen').addEventListener('click', () => say(null));
