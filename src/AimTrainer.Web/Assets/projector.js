// Setting a projector up from a phone: the page shows the state of a calibration in another process and sends actions to it, one after the other.
import { followEvents, send, why } from '/assets/live.js';
import { item, keepFocus, number } from '/assets/words.js';

const $ = id => document.getElementById(id);
const readKey = 'aimtrainer.projector.read';
let all = null, chosen = null, state = null, worked = false;

const keyOf = one => `${one.station} ${one.projector}`;

/** The cautions come first, once in each sitting. */
const hasRead = () => { try { return sessionStorage.getItem(readKey) !== null; } catch { return worked; } };
$('understood').addEventListener('click', () => {
  worked = true;
  try { sessionStorage.setItem(readKey, 'yes'); } catch { /* Holds for this page. */ }
  show();
  ($('projectors').querySelector('button') ?? $('set')).focus();
});

followEvents('/api/projectors/live', list => {
  // An answer to an action may have come before the picture of a moment earlier.
  const newer = one => all?.find(each => keyOf(each) === keyOf(one) && each.since === one.since && each.state.version > one.state.version) ?? one;
  all = list.map(newer);
  show();
}, (up, words) => {
  $('link').hidden = up;
  $('link').textContent = words ?? 'The host does not answer. This page goes on by itself when it does.';
});

function show() {
  const read = hasRead();
  $('cautions').hidden = read;
  $('reminder').hidden = !read;
  if (all === null) return;
  const before = chosen;
  if (!all.some(one => keyOf(one) === chosen)) chosen = all.length === 1 ? keyOf(all[0]) : null;
  const now = all.find(one => keyOf(one) === chosen);
  if (before !== null && !all.some(one => keyOf(one) === before) && state) {
    const saved = state.saved ? `Its map is saved as ${state.saved}.` : 'No map was saved; the one that was used before stays.';
    $('closed').textContent = `The calibration of lane ${state.station}, projector ${state.projector}, was closed. ${saved}`;
    $('closed').hidden = false;
  }
  state = now?.state ?? null;
  $('none').hidden = !read || all.length > 0;
  $('choose').hidden = !read || all.length < 2;
  $('work').hidden = !read || !state;
  keepFocus($('choose'), () => $('projectors').replaceChildren(...all.map(one => {
    const button = item('button', `Lane ${one.station}, ${one.projector}`, { type: 'button', 'aria-pressed': keyOf(one) === chosen, 'data-key': keyOf(one) });
    button.addEventListener('click', () => { chosen = keyOf(one); $('closed').hidden = true; show(); });
    return button;
  })));
  if (state) showState();
}

const fixed = (value, digits) => value === undefined || value === null ? 'unknown' : value.toFixed(digits);

const words = mark => ({ set: 'set', leftOut: 'left out', open: 'open' })[mark.state];

function showState() {
  const placing = state.phase === 'placing';
  const marks = state.marks, current = marks[state.current - 1], set = marks.filter(mark => mark.state === 'set').length;
  $('mark-title').textContent = `Lane ${state.station}, projector ${state.projector}`;
  $('to-do').textContent = state.toDo;
  const list = marks.map(mark => `${mark.number}. ${mark.name} \u2013 ${words(mark)}`);
  if ($('mark').dataset.list !== list.join('\n')) {
    $('mark').dataset.list = list.join('\n');
    $('mark').replaceChildren(...list.map((text, i) => item('option', text, { value: i + 1 })));
  }
  $('mark').value = String(state.current);
  $('said').textContent = state.said ? state.said[0].toUpperCase() + state.said.slice(1) : `Crosshair at ${number(state.crosshair.x, 1)}, ${number(state.crosshair.y, 1)} px`;
  $('trouble').hidden = !state.trouble;
  $('trouble').textContent = state.trouble ?? '';
  for (const button of document.querySelectorAll('#pad button, #mark-back, #mark-on, [data-do="skip"], [data-do="drop"], [data-do="turn"]')) button.disabled = !placing;
  $('mark').disabled = $('terms').disabled = !placing;
  document.querySelector('[data-do="skip"]').disabled = !placing || current.state !== 'open';
  document.querySelector('[data-do="drop"]').disabled = !placing || current.state === 'open';
  const undo = document.querySelector('[data-do="undo"]');
  undo.disabled = !state.undoes;
  undo.setAttribute('aria-label', state.undoes ? `Undo ${state.undoes}` : 'Undo');
  $('terms').value = String(state.distortionTerms);
  $('check').disabled = !placing || !state.fit;
  $('check').setAttribute('aria-pressed', state.checkPicture);
  $('check').textContent = state.checkPicture && placing ? 'Back to the marks' : 'Check picture';
  $('accept').disabled = placing && !state.fit;
  $('accept').textContent = placing ? 'Save the map' : 'Close the window';
  $('abandon').hidden = !placing;
  $('ends').textContent = placing
    ? (state.monitor ? `The map will hold for ${state.monitor.name}, ${state.monitor.width} x ${state.monitor.height}.` : 'In an ordinary window nothing is saved.')
    : state.saved ? `Saved as ${state.saved}. Do the lines of the check picture lie on the lane\u2019s own marks? If not: Undo puts this map aside.`
      : state.phase === 'accepted' ? 'In an ordinary window nothing is saved.' : 'Given up. Undo goes back to the marks.';
  showFit(set);
  drawMarks();
}

function showFit(set) {
  const fit = state.fit;
  $('no-map').textContent = fit ? '' : `${set} of at least 4 marks are set; 6 or more, far apart, make a map that can be trusted.`;
  $('no-map').hidden = Boolean(fit);
  const figure = (term, value, small) => {
    const box = document.createElement('div'), dd = item('dd', value);
    if (small) dd.append(item('small', small));
    box.append(item('dt', term), dd);
    return box;
  };
  $('figures').replaceChildren(...(fit ? [
    figure('All marks', `${fixed(fit.rmsPixels, 2)} px`, set === 4 ? 'four marks always fit: this says nothing' : `${fixed(fit.rmsBoards, 2)} boards across`),
    figure('Worst mark', `${fixed(fit.worstPixels, 2)} px`, set === 4 ? '' : `${fixed(fit.worstBoards, 2)} boards across`),
    fit.leaveOneOutPixels === undefined ? figure('Between marks', 'unknown', 'place a fifth mark') : figure('Between marks', `${fixed(fit.leaveOneOutPixels, 2)} px`),
  ] : []));
  $('refusals').hidden = state.refusals.length === 0;
  $('refusals').textContent = state.refusals.map(one => `${one.found}. ${one.toDo}.`).join(' ');
  $('distances').replaceChildren(...distanceWords());
  $('each').replaceChildren(...state.marks.filter(mark => mark.state === 'set').map(mark => {
    const row = document.createElement('tr');
    row.append(item('th', mark.name, { scope: 'row' }), item('td', fixed(mark.errorPixels, 2), { class: 'number' }), item('td', fixed(mark.errorBoards, 2), { class: 'number' }));
    return row;
  }));
}

/** Where a target of a board cannot be shown as it is graded, and how wide one must be there. */
function distanceWords() {
  if (!state.distances) return [];
  const feet = list => list.map(one => number(one.feet, 0)).join(', ');
  const on = state.distances.filter(one => one.feet >= 0 && one.feet <= 60);
  const narrow = on.filter(one => one.oneBoard === 'tooNarrow'), beside = on.filter(one => one.oneBoard === 'besidePicture' || one.oneBoard === 'outsideStretch');
  const lines = [item('p', `It draws ${number(state.fit.fromFeet, 0)} to ${number(state.fit.toFeet, 0)} ft of the lane.`)];
  if (narrow.length) {
    const widest = Math.max(...narrow.map(one => one.narrowestTargetBoards));
    const needed = `there it must be up to ${number(Math.ceil(widest * 10) / 10, 1)} boards wide, or the projector nearer`;
    lines.push(item('p', `A target of one board cannot be shown as it is graded at ${feet(narrow)} ft: ${needed}.`, { class: 'note' }));
  }
  if (beside.length) lines.push(item('p', `At ${feet(beside)} ft the middle of the lane lies beside the picture: no target can be shown there.`, { class: 'note' }));
  if (!narrow.length && !beside.length) lines.push(item('p', 'A target of one board can be shown as it is graded at every 5 ft of it.'));
  return lines;
}

const svgItem = (name, attributes) => {
  const node = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  return node;
};

/** The lane as it is seen from behind the foul line: the right edge at the right. */
function drawMarks() {
  const x = mark => 4 + (40 - mark.boardFromRight - 0.5) / 39 * 100, y = mark => 182 - mark.feet / 60 * 176;
  const at = state.marks[state.current - 1];
  $('marks').replaceChildren(
    svgItem('rect', { x: 4, y: 6, width: 100, height: 176, class: 'lane-wood' }),
    svgItem('circle', { cx: x(at), cy: y(at), r: 5.5, class: 'at' }),
    ...state.marks.map(mark => svgItem('circle', { cx: x(mark), cy: y(mark), r: 2.4, class: mark.state })));
  const set = state.marks.filter(mark => mark.state === 'set').length;
  $('marks').setAttribute('aria-label', `The lane\u2019s marks, seen from the approach: ${set} set. The one to place: ${at.name}.`);
}

/** Actions go one after the other, in the order of the taps; while a finger stays down, only as fast as they are done. */
let queue = Promise.resolve(), waiting = 0;
function act(action) {
  if (!state) return queue;
  const url = `/api/projectors/${state.station}/${encodeURIComponent(state.projector)}/actions`;
  waiting++;
  queue = queue.then(async () => {
    const answer = await send('POST', url, action);
    waiting--;
    const one = all.find(each => keyOf(each) === chosen);
    if (answer.ok && one && answer.body.version >= one.state.version) { one.state = answer.body; show(); }
    $('not-done').hidden = answer.ok || answer.status === 404;
    $('not-done').textContent = answer.ok ? '' : why(answer);
  });
  return queue;
}

const stepChosen = () => document.querySelector('[name="step"]:checked').value;
const move = (direction, other = false) => act({ kind: 'nudge', direction, step: (stepChosen() === 'fine') === other ? 'coarse' : 'fine' });

let held;
const release = () => { clearTimeout(held); clearInterval(held); };
for (const button of document.querySelectorAll('[data-move]')) {
  button.addEventListener('click', () => move(button.dataset.move));
  button.addEventListener('pointerdown', () => {
    release();
    held = setTimeout(() => { held = setInterval(() => { if (waiting === 0 && !button.disabled) move(button.dataset.move); }, 90); }, 450);
  });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave']) button.addEventListener(end, release);
  button.addEventListener('contextmenu', event => event.preventDefault());
}
$('pad').addEventListener('keydown', event => {
  const direction = { ArrowUp: 'up', ArrowDown: 'down', ArrowLeft: 'left', ArrowRight: 'right' }[event.key];
  if (!direction) return;
  event.preventDefault();
  if (!event.repeat || waiting === 0) move(direction, event.shiftKey);
});

const goTo = mark => act({ kind: 'goTo', mark });
$('mark').addEventListener('change', () => goTo(Number($('mark').value)));
$('mark-back').addEventListener('click', () => goTo((state.current + state.marks.length - 2) % state.marks.length + 1));
$('mark-on').addEventListener('click', () => goTo(state.current % state.marks.length + 1));
$('set').addEventListener('click', () => act({ kind: 'set' }));
for (const button of document.querySelectorAll('[data-do]')) button.addEventListener('click', () => act({ kind: button.dataset.do }));
$('terms').addEventListener('change', () => act({ kind: 'chooseDistortion', terms: Number($('terms').value) }));
$('check').addEventListener('click', () => act({ kind: 'check', on: !state.checkPicture }));
$('accept').addEventListener('click', () => act({ kind: 'accept' }));
$('abandon').addEventListener('click', () => act({ kind: 'abandon' }));

$('let-in')?.addEventListener('submit', async event => {
  event.preventDefault();
  const answer = await send('POST', '/api/access/codes', { station: Number($('let-in-lane').value), for: 'projector' });
  $('code-wrong').hidden = answer.ok;
  $('code-wrong').textContent = answer.ok ? '' : why(answer);
  if (!answer.ok) return;
  const { code, station } = answer.body;
  $('code').replaceChildren(item('strong', `${code.slice(0, 3)} ${code.slice(3)}`, { class: 'digits' }), item('span', ` for lane ${station}, once, for ten minutes`));
});
