// What is planned: the throw, the ball, the oil pattern, what a fit found, the bowler's scatter. Kept in this browser for all pages of planning.

import { whoAmI, send, why } from '/assets/live.js';
import { count, item, number } from '/assets/words.js';

const key = 'aimtrainer.plan';
const start = {
  hand: 'right', laydownBoard: 23, laydownFeet: 0, launchAngleDeg: 3, speedMph: 17, revsRpm: 330, axisRotationDeg: 50, axisTiltDeg: 12,
  downlaneFeet: 40, slideDistanceBoards: 7, weightLb: 15, radiusOfGyrationIn: 2.5, grip: 1,
  lane: 'house', laneText: '', laneGood: false, fit: null, fitFrom: null,
  spreadLaydown: 0.5, spreadAngle: 0.2, spreadSpeed: 0.3, spreadRevs: 10, correlations: null, bowler: '', bowlerShots: null,
  windowLowBoard: 17, windowHighBoard: 18, windowLowAngle: 4, windowHighAngle: 6, windowAt: 'contact',
  gridFirstBoard: 8, gridLastBoard: 34, gridFirstAngle: -1, gridLastAngle: 6,
};

// An invented pattern of two passes, for people to put their own numbers in.
const example = `{
  "name": "two passes, invented",
  "mu_dry": 0.2, "mu_oil": 0.03, "u0": 6,
  "passes": [
    { "from_board": 2, "to_board": 38, "start_ft": 0, "end_ft": 40, "units": 6 },
    { "from_board": 10, "to_board": 30, "start_ft": 0, "end_ft": 34, "units": 40, "end_units": 15 }
  ]
}
`;

const kept = () => { try { return JSON.parse(localStorage.getItem(key)) ?? {}; } catch { return {}; } };
export const plan = { ...start, ...kept() };

/** Keeps what was changed, and tells the page. */
export function change(values) {
  Object.assign(plan, values);
  try { localStorage.setItem(key, JSON.stringify(plan)); } catch { /* Nothing is kept in this browser; it holds for this page. */ }
  show();
}

export const reset = () => change({ ...start, laneText: plan.laneText });

export const profile = JSON.parse(document.getElementById('lane-profile').textContent);
export const boardInches = profile.widthInches / 39;
export const arrowsFeet = 15;

/** Boards that a line at an angle crosses in some feet, outward. */
const outward = (degrees, feet) => Math.tan(degrees * Math.PI / 180) * feet * 12 / boardInches;

/** The board at the arrows at which the throw is aimed: on the straight line. */
export const aimedAt = () => plan.laydownBoard - outward(plan.launchAngleDeg, arrowsFeet - plan.laydownFeet);

/** The straight line's board at a distance. */
export const straightAt = feet => plan.laydownBoard - outward(plan.launchAngleDeg, feet - plan.laydownFeet);

const angleTo = (laydown, arrows) => Math.atan((laydown - arrows) * boardInches / ((arrowsFeet - plan.laydownFeet) * 12)) * 180 / Math.PI;

/** The angle of a line from a board of the foul line to one at the arrows. */
export const angleOf = (laydown, arrows) => Math.atan((laydown - arrows) * boardInches / (arrowsFeet * 12)) * 180 / Math.PI;

/** The plan with the laydown on a board of the foul line and an angle. */
export const setLine = (boardAtFoulLine, degrees) =>
  change({ laydownBoard: tidy(boardAtFoulLine - outward(degrees, plan.laydownFeet), 4), launchAngleDeg: tidy(degrees, 5) });

/** The plan after a move of feet and target at the arrows, in boards inward. */
export const move = (feet, target) => {
  const laydown = plan.laydownBoard + feet, arrows = aimedAt() + target;
  change({ laydownBoard: tidy(laydown, 4), launchAngleDeg: tidy(angleTo(laydown, arrows), 5) });
};

const tidy = (value, digits = 2) => Number(value.toFixed(digits));

const mph = 0.44704;

export const release = () => ({
  hand: plan.hand, laydownBoard: plan.laydownBoard, laydownFeet: plan.laydownFeet, launchAngleDeg: plan.launchAngleDeg, speedMps: plan.speedMph * mph,
  revsRpm: plan.revsRpm, axisRotationDeg: plan.axisRotationDeg, axisTiltDeg: plan.axisTiltDeg,
});

export const bowler = () => ({
  hand: plan.hand, speedMph: plan.speedMph, revsRpm: plan.revsRpm, axisRotationDeg: plan.axisRotationDeg, axisTiltDeg: plan.axisTiltDeg, laydownFeet: plan.laydownFeet,
  spread: { laydownBoards: plan.spreadLaydown, launchAngleDeg: plan.spreadAngle, speedMph: plan.spreadSpeed, revsRpm: plan.spreadRevs },
  ...(plan.correlations ? { correlations: plan.correlations } : {}),
});

/** Ball and lane as the calls take them. */
export function ballAndLane(withFit = true) {
  return {
    ball: { massLb: plan.weightLb, diameterIn: 8.55, radiusOfGyrationIn: plan.radiusOfGyrationIn, grip: plan.grip },
    ...(isOwn() ? { lane: JSON.parse(plan.laneText) } : {}),
    ...(withFit && plan.fit ? { fit: plan.fit } : {}),
  };
}

const isOwn = () => plan.lane === 'own' && plan.laneGood;

export const patternWords = () => isOwn() ? 'my own' : 'house-like, 40 ft (invented)';

/** Whether the numbers are a lane's own, in words. */
export const trustWords = () => plan.fit
  ? `The lane as fitted to ${plan.fitFrom}. Still a model: it holds for that ball's cover and that state of the oil.`
  : 'A model, not a measurement: the frictions of a lane cannot be read off a pattern, and with guessed ones this is a sketch. Fit the lane to measured shots first (Today\u2019s lane).';

const callers = [];

/** Calls back now and whenever the plan changes. */
export function onChange(callback) { callers.push(callback); callback(); }

function show() {
  for (const field of document.querySelectorAll('[data-plan]')) {
    const value = field.dataset.plan === 'arrowsBoard' ? aimedAt() : plan[field.dataset.plan];
    if (field.type === 'radio') field.checked = field.value === value;
    else if (field !== document.activeElement || tidy(Number(field.value), 2) !== tidy(value, 2)) field.value = String(tidy(value, 2));
  }
  for (const slide of document.querySelectorAll('[data-slide]')) {
    const value = slide.dataset.slide === 'arrowsBoard' ? aimedAt() : plan[slide.dataset.slide];
    slide.value = String(value);
    slide.setAttribute('aria-valuetext', `${tidy(value)} ${document.getElementById(`${slide.dataset.slide}-unit`)?.textContent ?? ''}`.trim());
  }
  const say = (id, text) => { const node = document.getElementById(id); if (node) node.textContent = text; };
  say('ball-said', `${number(plan.weightLb)} lb, radius of gyration ${number(plan.radiusOfGyrationIn)} in, grip ${number(plan.grip)}`);
  say('pattern-said', patternWords());
  const own = document.getElementById('own');
  if (own) own.hidden = plan.lane !== 'own';
  for (const id of ['fit-said', 'fit-drop']) { const node = document.getElementById(id); if (node) node.hidden = !plan.fit; }
  if (plan.fit) say('fit-said', `Fitted to ${plan.fitFrom}: oil friction ${number(plan.fit.oilFriction, 4)}, dry boards ${number(plan.fit.dryFriction, 3)}${plan.fit.patternFeet === null ? '' : `, oil up to ${number(plan.fit.patternFeet, 1)} ft`}.`);
  for (const callback of callers) callback();
}

function set(name, value) {
  if (name === 'arrowsBoard') change({ launchAngleDeg: tidy(angleTo(plan.laydownBoard, value), 5) });
  else if (name === 'laydownBoard' && document.querySelector('[data-plan="arrowsBoard"]')) {
    // Who moves the laydown keeps the angle; the target at the arrows goes along.
    change({ laydownBoard: value });
  } else if (name === 'lane' && value !== plan.lane) change({ lane: value, fit: null, fitFrom: null });
  else change({ [name]: value, ...(name.startsWith('spread') ? { bowler: '', correlations: null, bowlerShots: null } : {}) });
}

const wrong = document.getElementById('wrong');
const wrongs = new Map();

/** Says on top of the page what is wrong; with no words, that it no longer is. */
export function say(what, words) {
  if (words) wrongs.set(what, words); else wrongs.delete(what);
  wrong.hidden = wrongs.size === 0;
  const text = [...wrongs.values()].join(' ');
  if (wrong.textContent !== text) wrong.textContent = text;
}

document.addEventListener('input', event => {
  const { slide, plan: name } = event.target.dataset ?? {};
  if (slide) { say(slide); set(slide, Number(event.target.value)); }
  if (!name) return;
  if (event.target.type === 'radio') { set(name, event.target.value); return; }
  const field = event.target, value = Number(field.value), label = document.querySelector(`label[for="${field.id}"]`)?.textContent ?? name;
  const good = field.value.trim() !== '' && Number.isFinite(value) && value >= Number(field.min) && value <= Number(field.max);
  field.setAttribute('aria-invalid', String(!good));
  say(name, good ? '' : `${label}: found ${field.value.trim() === '' ? 'no number' : field.value}; allowed: ${field.min} to ${field.max}. The drawing shows the last good value.`);
  if (good) set(name, value);
});

// The user's own pattern: checked as it is typed, with what is wrong where it is.
const text = document.getElementById('lane-text');
let waiting, asked = 0, wrongLines = new Set();

function lines() {
  const rows = document.getElementById('lane-lines'), has = text.value.split('\n').length;
  while (rows.children.length > has) rows.lastChild.remove();
  while (rows.children.length < has) rows.append(item('span', String(rows.children.length + 1)));
  [...rows.children].forEach((row, index) => row.classList.toggle('wrong', wrongLines.has(index + 1)));
  rows.scrollTop = text.scrollTop;
}

async function check() {
  const mine = ++asked, checked = text.value, findings = document.getElementById('lane-findings');
  if (checked.trim() === '') {
    findings.replaceChildren(item('p', 'Paste a pattern, take a file, or start from an example. Until then the house-like one is used.', { class: 'quiet' }));
    change({ laneText: '', laneGood: false, fit: null, fitFrom: null });
    return;
  }
  const answer = await send('POST', '/api/plan/lane/check', undefined, checked);
  if (mine !== asked) return;
  const problems = answer.body?.problems ?? [], good = answer.ok && answer.body.good;
  wrongLines = new Set(problems.map(problem => problem.line));
  text.setAttribute('aria-invalid', String(!good));
  lines();
  if (good) findings.replaceChildren(item('p', 'Nothing is wrong with it.', { class: 'note good' }));
  else if (problems.length === 0) findings.replaceChildren(item('p', why(answer), { class: 'note bad' }));
  else {
    const list = document.createElement('ul');
    for (const problem of problems.slice(0, 20)) {
      const li = item('li'), jump = item('button', problem.line > 0 ? `line ${problem.line}` : 'whole', { type: 'button' }), words = item('span');
      jump.addEventListener('click', () => select(problem.line));
      if (problem.path) words.append(item('code', problem.path));
      words.append(`found ${problem.found}; allowed: ${problem.allowed}`);
      li.append(jump, words);
      list.append(li);
    }
    findings.replaceChildren(item('p', `${count(problems.length, 'mistake')} to correct; until then the house-like pattern is used:`, { class: 'note bad' }), list);
  }
  const changed = checked !== plan.laneText;
  change({ laneText: checked, laneGood: good, ...(changed ? { fit: null, fitFrom: null } : {}) });
}

/** Puts the cursor on a line, with the line chosen. */
function select(line) {
  const all = text.value.split('\n'), at = Math.max(1, line);
  const from = all.slice(0, at - 1).reduce((sum, each) => sum + each.length + 1, 0);
  text.focus();
  text.setSelectionRange(from, from + (all[at - 1]?.length ?? 0));
  text.scrollTop = Math.max(0, (at - 3) * parseFloat(getComputedStyle(text).lineHeight));
}

if (text) {
  text.value = plan.laneText;
  text.addEventListener('input', () => { lines(); clearTimeout(waiting); waiting = setTimeout(check, 250); });
  text.addEventListener('scroll', () => { document.getElementById('lane-lines').scrollTop = text.scrollTop; });
  const put = words => { text.value = words; lines(); check(); };
  document.getElementById('lane-example').addEventListener('click', () => put(example));
  document.getElementById('lane-file').addEventListener('change', async event => {
    const file = event.target.files[0];
    event.target.value = '';
    if (!file) return;
    if (file.size > 1 << 20) { document.getElementById('lane-findings').replaceChildren(item('p', `${file.name}: found ${file.size} bytes; allowed: at most ${1 << 20}`,
      { class: 'note bad' })); return; }
    put(await file.text());
  });
  document.getElementById('fit-drop').addEventListener('click', () => change({ fit: null, fitFrom: null }));
  lines();
  if (plan.lane === 'own') check();
}

/** Asks for a computation that takes its time; calls onProgress(share or null) meanwhile. The answer is {ok, body, why}. */
export async function compute(url, body, onProgress, signal) {
  const once = async () => {
    const access = await whoAmI();
    return fetch(url, {
      method: 'POST', signal, body: JSON.stringify(body),
      headers: { 'content-type': 'application/json', ...(access.formToken ? { 'x-aimtrainer-form': access.formToken } : {}) },
    });
  };
  try {
    let answer = await once();
    if (!answer.ok) {
      let said = await answer.json();
      if (said.type === '/problems/form-token') {
        await whoAmI(true);
        answer = await once();
        said = answer.ok ? null : await answer.json();
      }
      if (said) return { ok: false, why: why({ status: answer.status, body: said }) };
    }
    const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
    let rest = '';
    for (let piece; !(piece = await reader.read()).done;) {
      rest += piece.value;
      for (let end; (end = rest.indexOf('\n\n')) >= 0;) {
        const event = Object.fromEntries(rest.slice(0, end).split('\n').map(line => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 2)]));
        rest = rest.slice(end + 2);
        const said = JSON.parse(event.data);
        if (event.event === 'progress') onProgress(said.share);
        if (event.event === 'answer') return { ok: true, body: said };
        if (event.event === 'refused' || event.event === 'stopped') return { ok: false, why: `${said.why[0].toUpperCase()}${said.why.slice(1)}.` };
      }
    }
    return { ok: false, why: 'The host stopped before it had an answer. Try again when it is back.' };
  } catch (fault) {
    return { ok: false, why: fault.name === 'AbortError' ? 'Stopped.' : 'The host does not answer. Try again when it is back.' };
  }
}

/** Wires a button that begins a computation, one that stops it, and the words of its progress. */
export function onGo(url, body, done) {
  const go = document.getElementById('go'), stop = document.getElementById('stop'), progress = document.getElementById('progress');
  let running = null;
  go.addEventListener('click', async () => {
    running?.abort();
    const mine = running = new AbortController();
    let wish;
    try { wish = body(); } catch (fault) { progress.replaceChildren(item('p', fault.message, { class: 'note bad' })); return; }
    const bar = item('progress', '', { max: '1', 'aria-label': 'Progress' }), words = item('p', 'Waiting for its turn.');
    progress.replaceChildren(words, bar);
    stop.hidden = false;
    document.documentElement.dataset.computing = 'yes';
    const answer = await compute(url, wish, share => {
      if (mine !== running) return;
      if (share === null) bar.removeAttribute('value'); else bar.value = share;
      words.textContent = share === null ? 'Waiting for its turn.' : share > 0 ? `Working: ${Math.round(share * 100)} %.` : 'Working.';
    }, mine.signal);
    if (mine !== running) return;
    running = null;
    stop.hidden = true;
    document.documentElement.dataset.computing = 'no';
    progress.replaceChildren(item('p', answer.ok ? 'Done.' : answer.why, { class: answer.ok ? 'quiet' : 'note bad' }));
    if (answer.ok) done(answer.body, wish);
  });
  stop.addEventListener('click', () => running?.abort());
}

/** Makes a drill of a line and opens the start page of the chosen lane with it. */
export async function train(line, practise, onWrong) {
  const { arrowsBoard, downlaneBoard } = line;
  if (arrowsBoard === null || downlaneBoard === null) { onWrong('This ball ends in a gutter before its targets: there is nothing to train along. Change the line first.'); return; }
  const answer = await send('POST', '/api/plan/drill', { ...line, ...(practise ? { practise } : {}) });
  if (answer.ok) location.href = `/lane/${document.getElementById('train-lane').value}/start?drill=${encodeURIComponent(answer.body.id)}`;
  else onWrong(why(answer));
}

show();
