// The coach's page of displays on other machines.
import { send, why, whoAmI } from '/assets/live.js';

const $ = id => document.getElementById(id);
const kinds = { overhead: 'screen', projector: 'projector' };

function say(answer) {
  $('wrong').hidden = answer.ok;
  $('wrong').textContent = answer.ok ? '' : why(answer);
  return answer.ok;
}

function item(one) {
  const li = document.createElement('li');
  const end = document.createElement('button');
  end.type = 'button';
  end.textContent = 'Revoke';
  end.setAttribute('aria-label', `Revoke ${one.name}, lane ${one.station}: it goes dark`);
  end.addEventListener('click', async () => { if (say(await send('DELETE', `/api/access/displays/${one.id}`))) show(); });
  const state = document.createElement('span');
  state.className = one.looking > 0 ? 'chip on' : 'chip';
  state.textContent = one.looking === 0 ? 'not connected' : one.looking === 1 ? 'connected' : `connected ${one.looking} times`;
  li.append(`${one.name}, lane ${one.station}, ${kinds[one.kind]} `, state, ' ', end);
  return li;
}

async function show() {
  const answer = await fetch('/api/access/displays').catch(() => null);
  if (!answer?.ok) return;
  const all = await answer.json();
  const text = JSON.stringify(all);
  if (text === show.last) return;
  show.last = text;
  $('displays').replaceChildren(...all.map(item));
  $('no-displays').hidden = all.length > 0;
}

$('new-display').addEventListener('submit', async event => {
  event.preventDefault();
  const kind = document.querySelector('[name="display-kind"]:checked').value;
  const answer = await send('POST', '/api/access/displays', { name: $('display-name').value, station: Number($('display-station').value), kind });
  if (!say(answer)) return;
  const { display, token } = answer.body;
  const told = document.createElement('p'), how = document.createElement('p'), run = document.createElement('code'), shown = document.createElement('code');
  shown.textContent = token;
  told.append('The token, shown this once: ', shown);
  run.textContent = `aimtrainer display ${display.kind} --server ${location.origin} --station ${display.station}`;
  how.append('On the machine at the lane, in its desktop session: ', run, ' It asks for the token once, and keeps it for its user alone.');
  $('display-made').replaceChildren(told, how);
  show();
});

await whoAmI();
await show();
setInterval(() => { if (!document.hidden) show(); }, 3000);
