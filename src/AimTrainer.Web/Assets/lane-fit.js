import { send, why } from '/assets/live.js';
import { count, item, number } from '/assets/words.js';
import { ballAndLane, bowler, change, onChange, onGo, patternWords, plan, say } from '/assets/plan.js';

const session = document.getElementById('session'), names = { oilFriction: 'friction of the oil', dryFriction: 'friction of dry boards', patternFeet: 'pattern end' };
const shown = (parameter, value) => value === null ? 'none' : parameter === 'patternFeet' ? `${value.toFixed(1)} ft` : value.toFixed(4);
let fitted = null, said = '';

session.addEventListener('change', async () => {
  const words = document.getElementById('session-said');
  say('session');
  words.textContent = '';
  if (!session.value) return;
  const answer = await send('GET', `/api/plan/crossings/${encodeURIComponent(session.value)}`);
  if (!answer.ok) { say('session', why(answer)); return; }
  const { shots, simulated, bowler: name } = answer.body, good = shots.filter(shot => shot.places.length >= 3).length;
  words.textContent = `${count(shots.length, 'shot')} of ${name}${simulated ? ', simulated: invented' : ''}; ${good} with crossings at three distances or more.`;
});

onChange(() => {
  document.getElementById('usual-said').textContent = `${number(plan.speedMph, 1)} mph at release, ${number(plan.revsRpm, 0)} rpm, axis rotation ${number(plan.axisRotationDeg, 1)}°, tilt ${number(plan.axisTiltDeg, 1)}°. A wrong one for all shots ends up in the frictions.`;
});

function wish() {
  if (!session.value) throw new Error('Session: found none; choose one whose shots were measured.');
  const option = session.selectedOptions[0].textContent;
  said = option.split(' · ').slice(0, 2).join(', ');
  return {
    session: session.value, ...ballAndLane(false), ...(document.getElementById('usual').checked ? { bowler: bowler() } : {}),
    keepOil: document.getElementById('keepOil').checked, keepDry: document.getElementById('keepDry').checked, keepPattern: document.getElementById('keepPattern').checked,
  };
}

function done(fit) {
  fitted = fit;
  document.getElementById('fit').hidden = false;
  document.getElementById('fit-none').hidden = true;
  document.getElementById('used').hidden = true;
  document.getElementById('fit-words').textContent = `${count(fit.shots, 'shot')} fitted on the pattern ${patternWords()}. ${fit.tells ? 'They tell everything that was asked.' : 'They do not tell everything that was asked.'} Noise of a measured board: ${fit.noiseBoards < 0.01 ? 'below 0.01' : number(fit.noiseBoards, 2)} boards, ${fit.noiseGiven ? 'as given' : 'estimated from these shots'}.`;
  document.getElementById('fit-numbers').replaceChildren(...fit.parameters.map(one => {
    const row = item('tr'), limits = one.fitted ? `${one.low === null ? '(none)' : shown(one.parameter, one.low)} to ${one.high === null ? '(none)' : shown(one.parameter, one.high)}` : '—';
    row.append(item('th', names[one.parameter], { scope: 'row' }), item('td', shown(one.parameter, one.value), { class: 'number', 'data-name': 'Value' }),
      item('td', limits, { class: 'number', 'data-name': '95 % limits' }),
      item('td', !one.fitted ? (one.value === null ? 'The oil does not end.' : 'Taken from the pattern.') : one.cannotTell ? `The shots cannot tell: ${one.cannotTell}.`
        : 'Yes.', { 'data-name': 'Told' }));
    return row;
  }));
  document.getElementById('fit-said-more').replaceChildren(
    ...fit.usualTaken.map(one => item('li', `${one.what} not measured in ${count(one.shots, 'shot')}: that of the plan taken. Where it is wrong, the frictions are as wrong the other way.`)),
    ...fit.misfits.slice(0, 5).map(one => item('li', `Shot ${one.line} stands out by ${number(one.noises, 1)} noises: misread, or another ball? Void it in its session if so, and fit again.`)),
    ...fit.leftOut.slice(0, 5).map(one => item('li', `Shot ${one.line} left out: ${one.why}.`)),
    ...(fit.leftOut.length > 5 ? [item('li', `and ${fit.leftOut.length - 5} more left out.`)] : []),
    ...(fit.tells ? [] : [item('li', 'A number that the shots cannot tell is a guess: paths on it stay a sketch, and the aim map spreads its chances over what it may be.')]));
}

document.getElementById('use').addEventListener('click', () => {
  const { oilFriction, dryFriction, patternFeet, covariance } = fitted;
  change({ fit: { oilFriction, dryFriction, ...(patternFeet === null ? {} : { patternFeet }), covariance }, fitFrom: `${count(fitted.shots, 'shot')} of ${said}` });
  const used = document.getElementById('used');
  used.hidden = false;
  used.textContent = 'Line planner and aim map now use this lane, in this browser, until the pattern is changed.';
});

onGo('/api/plan/fit', wish, done);
