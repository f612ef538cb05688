// The order of bowlers on a lane: whose turn it is, and what a coach changes. The state comes from the page's own stream.
import { ballsIn, rolesOf, showBallFields } from '/assets/ball-fields.js';
import { send, why } from '/assets/live.js';
import { item } from '/assets/words.js';

const panel = document.getElementById('turns');
const station = Number(panel.dataset.station);
const list = document.getElementById('turn-list');
const wrong = document.getElementById('turn-wrong');
let turns = null;

addEventListener('aimtrainer:station', event => show(event.detail));

function show(state) {
  turns = state.turns ?? null;
  const open = state.phase && state.phase !== 'ended' || turns?.places.some(place => place.phase !== 'ended');
  document.getElementById('turn-join').hidden = !open;
  panel.hidden = !turns && !open;
  const focused = list.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  list.replaceChildren(...(turns?.places ?? []).map((place, index) => {
    const li = item('li', '', { class: place.isNow ? 'now' : place.status });
    const said = place.isNow ? 'throws now' : place.isNext ? 'next' : { here: 'waits', away: 'away', done: 'done' }[place.status];
    const what = item('span', '', { class: 'who' });
    what.append(item('b', place.bowler), item('small', `${said} · ${place.shots} ${place.shots === 1 ? 'shot' : 'shots'}`));
    const tools = item('span', '', { class: 'tools' });
    if (place.status === 'here' && !place.isNow) tools.append(button('Throws now', { kind: 'give', session: place.sessionId }, place));
    const other = turns.places[index - 1];
    if (other && place.status !== 'done') tools.append(button('Earlier', { kind: 'swap', session: place.sessionId, with: other.sessionId }, place));
    if (place.status === 'here') tools.append(button('Leaves', { kind: 'leave', session: place.sessionId }, place));
    if (place.status === 'away') tools.append(button('Is back', { kind: 'return', session: place.sessionId }, place));
    li.append(what, tools);
    return li;
  }));
  const skip = document.getElementById('turn-skip');
  skip.hidden = !(turns?.places.some(place => place.isNow) && turns.places.some(place => place.isNext));
  document.getElementById('turn-how').textContent = turns ? `${turns.shotsATurn === 1 ? 'One shot' : `${turns.shotsATurn} shots`} each in turn.` : 'One bowler throws here. Whoever joins throws in turn.';
  if (focused) [...list.querySelectorAll('button')].find(each => each.dataset.key === focused)?.focus({ preventScroll: true });
}

function button(words, change, place) {
  const node = item('button', words, { type: 'button', 'aria-label': `${place.bowler}: ${words}`, 'data-key': `${change.kind} ${place.sessionId}` });
  node.addEventListener('click', () => act(change));
  return node;
}

async function act(change) {
  const answer = await send('POST', `/api/stations/${station}/turns`, { ...change, seen: turns.number });
  wrong.hidden = answer.ok;
  wrong.textContent = answer.ok ? '' : why(answer);
}

document.getElementById('turn-skip').addEventListener('click', () => act({ kind: 'skip' }));
const form = document.getElementById('turn-join');
const roles = document.getElementById('join-roles');
const drillChosen = () => showBallFields(roles, rolesOf(form.drill.selectedOptions[0]), 'join-ball');
form.drill.addEventListener('change', drillChosen);
drillChosen();
form.addEventListener('submit', async event => {
  event.preventDefault();
  const answer = await send('POST', `/api/stations/${station}/bowlers`, { bowler: form.bowler.value.trim(), hand: form.hand.value, drill: form.drill.value, balls: ballsIn(roles) });
  wrong.hidden = answer.ok;
  wrong.textContent = answer.ok ? '' : why(answer);
  if (answer.ok) {
    form.reset();
    drillChosen();
  }
});
