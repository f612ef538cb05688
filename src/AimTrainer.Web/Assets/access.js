// Signing in, pairing a phone, and the coach's page of codes and tokens.
import { send, why, whoAmI } from '/assets/live.js';

const $ = id => document.getElementById(id);

function say(answer) {
  $('wrong').hidden = answer.ok;
  $('wrong').textContent = answer.ok ? '' : why(answer);
  return answer.ok;
}

/** Only a place of this host: an address from a link must not lead elsewhere. */
function next() {
  const wanted = new URLSearchParams(location.search).get('next') ?? '/';
  const url = new URL(wanted, location.origin);
  return url.origin === location.origin ? url.pathname : '/';
}

$('sign-in')?.addEventListener('submit', async event => {
  event.preventDefault();
  const answer = await send('POST', '/api/access/sign-in', { passphrase: $('passphrase').value });
  if (say(answer)) location.href = next();
  else $('passphrase').select();
});

if ($('pair')) {
  const take = () => {
    if (location.hash.length < 2) return;
    $('code').value = location.hash.slice(1);
    history.replaceState(null, '', location.pathname); // A code is for nobody's history.
  };
  take();
  addEventListener('hashchange', take);
  $('pair').addEventListener('submit', async event => {
    event.preventDefault();
    const answer = await send('POST', '/api/access/pair', { code: $('code').value });
    if (say(answer)) location.href = `/bowler/${answer.body.station}`;
    else $('code').select();
  });
}

$('sign-out')?.addEventListener('click', async () => {
  if (say(await send('POST', '/api/access/sign-out'))) location.href = '/sign-in';
});

function item(text, button, act) {
  const li = document.createElement('li');
  const end = document.createElement('button');
  end.type = 'button';
  end.textContent = button;
  end.addEventListener('click', async () => { if (say(await act())) show(); });
  end.setAttribute('aria-label', `${button}: ${text}`);
  const said = document.createElement('span');
  said.className = 'said';
  said.textContent = text;
  li.append(said, end);
  return li;
}

async function show() {
  await whoAmI();
  const [pairings, feeds] = await Promise.all(['pairings', 'feeds'].map(name => fetch(`/api/access/${name}`).then(answer => answer.json())));
  const until = time => new Date(time).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  $('no-pairings').hidden = pairings.length > 0;
  $('no-feeds').hidden = feeds.length > 0;
  $('pairings').replaceChildren(...pairings.map(one =>
    item(`${one.role === 'projector' ? 'Projector' : 'Phone'}, lane ${one.station}, until ${until(one.until)} (${one.id})`, 'Unpair',
      () => send('DELETE', `/api/access/pairings/${one.id}`))));
  $('feeds').replaceChildren(...feeds.map(one =>
    item(`${one.name}, lane ${one.station} (${one.id})`, 'Revoke', () => send('DELETE', `/api/access/feeds/${one.id}`))));
}

if ($('new-code')) {
  $('new-code').addEventListener('submit', async event => {
    event.preventDefault();
    const answer = await send('POST', '/api/access/codes', { station: Number($('code-station').value) });
    if (!say(answer)) return;
    const { code, station, address, reachable, qrSvg } = answer.body;
    const big = document.createElement('p');
    big.className = 'digits';
    big.textContent = `${code.slice(0, 3)} ${code.slice(3)}`;
    const how = document.createElement('p');
    how.textContent = reachable
      ? `For lane ${station}, once, for ten minutes: open ${address.split('#')[0]} on the phone, or scan the picture.`
      : `For lane ${station}, once, for ten minutes. This host listens on this machine only, so a phone cannot reach it yet.`;
    const picture = document.createElement('div');
    picture.className = 'qr';
    picture.innerHTML = qrSvg; // Drawn by the host itself.
    picture.querySelector('svg')?.setAttribute('role', 'img');
    picture.querySelector('svg')?.setAttribute('aria-label', 'QR code of the pairing address');
    $('code-made').replaceChildren(big, how, picture);
  });
  $('new-feed').addEventListener('submit', async event => {
    event.preventDefault();
    const answer = await send('POST', '/api/access/feeds', { name: $('feed-name').value, station: Number($('feed-station').value) });
    if (!say(answer)) return;
    const told = document.createElement('p');
    const token = document.createElement('code');
    token.className = 'token';
    token.textContent = answer.body.token;
    told.append('The token, shown this once. Copy it into the feed now: ', token);
    $('token-made').replaceChildren(told);
    show();
  });
  show();
}
