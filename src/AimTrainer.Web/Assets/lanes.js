import { follow } from '/assets/live.js';
import { feedWords, item, mark, percent, phaseWords, placeWords, progress } from '/assets/words.js';

const list = document.getElementById('lanes');
const link = document.getElementById('link');
const states = new Map();

// One stream for all lanes: a browser opens only six connections to one host.
follow('all', 'coach', changed => {
  for (const state of changed) { states.set(state.station, state); show(state); }
  document.getElementById('first').hidden = [...states.values()].some(state => state.phase);
}, (up, words) => {
  link.hidden = up;
  link.textContent = words ?? 'The host does not answer. This page goes on by itself when it does.';
}, ({ feeds = {} }) => {
  for (const [station, feed] of Object.entries(feeds)) if (states.has(Number(station))) show(Object.assign(states.get(Number(station)), { feed }));
});
addEventListener('aimtrainer:unit', () => states.forEach(show));

function show(state) {
  const box = list.querySelector(`[data-station="${state.station}"]`);
  if (!box) return;
  const open = Boolean(state.phase) && state.phase !== 'ended';
  const part = name => box.querySelector(`.${name}`);
  box.classList.toggle('free', !open);
  part('chip').textContent = open ? phaseWords[state.phase] : 'free';
  part('chip').className = `chip ${state.phase === 'throwing' ? 'on' : open ? 'wait' : ''}`;
  part('who').textContent = open ? `${state.bowler}${state.simulated ? ' (simulated)' : ''}` : state.phase === 'ended' ? `${state.bowler} is done` : 'nobody throws';
  const after = state.turns?.places.find(place => place.isNext);
  if (after) part('who').textContent += `, then ${after.bowler}`;
  part('what').textContent = state.phase ? state.drill.name : '';
  part('aim').textContent = open && state.aim ? state.aim.targets.map(each => placeWords(each.target)).join(', then ') : '';
  const dots = open ? [...state.lastShots].reverse().filter(shot => !shot.voidReason) : [];
  part('dots').replaceChildren(...dots.map(shot => {
    const [sign, kind, words] = mark(shot.held);
    const li = item('li');
    li.append(item('span', sign, { class: kind, role: 'img', 'aria-label': `shot ${shot.number}: ${words}` }));
    return li;
  }));
  part('dots').hidden = dots.length === 0;
  const rate = state.summary?.perTarget?.[0];
  part('how').textContent = open && state.block
    ? `${state.block.name}: ${progress(state.block)}`
      + `${rate?.graded ? `; ${rate.hits} of ${rate.graded} hit (true rate ${percent(rate.hitRateLow)} to ${percent(rate.hitRateHigh)})` : ''}`
    : '';
  part('feed').textContent = feedWords(state.feed);
  part('open').hidden = !state.phase;
  part('start').hidden = open;
}
