import { follow } from '/assets/live.js';
import { percent, phaseWords, progress } from '/assets/words.js';

const list = document.getElementById('lanes');
const link = document.getElementById('link');

// One stream for all lanes: a browser opens only six connections to one host.
follow('all', 'coach', states => {
  for (const state of Array.isArray(states) ? states : [states]) show(state);
}, isUp => { link.hidden = isUp; });

function show(state) {
  const box = list.querySelector(`[data-station="${state.station}"]`);
  if (!box) return;
  const open = state.phase && state.phase !== 'ended';
  box.querySelector('.who').textContent = open ? state.bowler : 'free';
  box.querySelector('.what').textContent = open ? `${state.drill.name}: ${phaseWords[state.phase]}` : 'no session';
  const rate = state.summary?.perTarget?.[0];
  box.querySelector('.how').textContent = open && state.block
    ? `${state.block.name}: ${progress(state.block)}${rate?.graded ? `, ${rate.hits} of ${rate.graded} hit (${percent(rate.hitRateLow)} to ${percent(rate.hitRateHigh)})` : ''}`
    : '';
}
